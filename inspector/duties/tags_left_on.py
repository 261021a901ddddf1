"""Whether a printed hold tag may still hang on a piece that is on hold no more: nobody writes down that it is off.

Known from the sheets of tags that name the piece: the last of them counts, so a tag of another outcome ends it.
"""

from datetime import date

from inspector.duties.office import Office
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.tags import TagSheet
from inspector.language import show_day, tr
from inspector.register.page import Page
from inspector.register.rows import from_body

TAGS = "tag_sheet"  # what the register calls a sheet of such tags
_RIGHTLY_ON = {Outcome.HOLD, Outcome.RETIRE}  # what a hold tag may hang on


def tag_left_on(office: Office, judged: Judged) -> str:
    """That a hold tag may still hang on the piece, with the day it was printed; empty where none may."""
    with office.book.reading() as page:
        return tag_left(page, judged)


def tag_left(page: Page, judged: Judged) -> str:
    """The same within a deed."""
    item = judged.dossier.item
    last = None if judged.verdict.outcome in _RIGHTLY_ON else _last(page, page.tags_ever(item))
    if last is None or last[1] is not Outcome.HOLD or page.whereabouts_of(item).where.is_closed:
        return ""
    return tr("A hold tag printed on {day} may still hang on it: take it off.", day=show_day(last[0]))


def _last(page: Page, tags: tuple[str, ...]) -> tuple[date, Outcome] | None:
    """Day and outcome of the last tag that was printed of a piece, by every tag it has or had."""
    for on, body in page.documents_naming(TAGS, tags):
        for one in from_body(body, TagSheet).tags:
            if one.tag in tags:
                return on, one.outcome
    return None

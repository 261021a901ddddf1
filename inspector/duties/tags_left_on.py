"""Whether a printed hold tag may still hang on a piece that is on hold no more: nobody writes down that it is off.

Known from the sheets of tags that name the piece: the last of them counts, so a tag of another outcome ends it.
"""

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
    if judged.verdict.outcome in _RIGHTLY_ON or page.whereabouts_of(item).where.is_closed:
        return ""
    tags = page.tags_ever(item)
    for on, body in page.documents_naming(TAGS, tags):
        for one in from_body(body, TagSheet).tags:
            if one.tag in tags:
                return _may_hang(one.outcome, show_day(on))
    return ""


def _may_hang(outcome: Outcome, day: str) -> str:
    if outcome is not Outcome.HOLD:
        return ""
    return tr("A hold tag printed on {day} may still hang on it: take it off.", day=day)

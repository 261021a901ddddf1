"""Tags to tie to pieces that are on hold, derated or retired: numbered, kept, printed again as they were."""

from collections.abc import Sequence

from inspector.duties.judge_anew import judge_anew
from inspector.duties.named_pieces import kept_as, open_each
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.tag_words import hold_tag, why_no_tag
from inspector.duties.tags_left_on import TAGS
from inspector.gear.tags import TagSheet
from inspector.language import tr
from inspector.paper.hold_tags import hold_tags
from inspector.paper.page_style import PageSize
from inspector.refused import Refused


def print_tags(office: Office, tags: Sequence[str]) -> Paper:
    """Number, keep and print the tags of these pieces; refused for all of them where one is fit or not at hand."""
    return _printed(office, enter_tags(office, tags))


def print_tags_again(office: Office, number: str) -> Paper:
    """Print a sheet of tags as it was kept."""
    return _printed(office, kept_as(office, TAGS, number, TagSheet))


def _printed(office: Office, sheet: TagSheet) -> Paper:
    return put_out(office, sheet.imprint.number, hold_tags(sheet, PageSize(office.page)))


def enter_tags(office: Office, tags: Sequence[str]) -> TagSheet:
    """Number and keep the tags; no file is written."""
    judge_anew(office)  # no tag may say what time alone has ended
    pieces = open_each(office, tags)
    with office.book.page() as page:
        refused = {one.dossier.item.tag: why for one in pieces if (why := why_no_tag(page, one))}
        if refused:
            why = " ".join(f"{tag}: {reason}" for tag, reason in refused.items())
            what = tr("A tag is printed of what is on hold, derated or retired. Leave these pieces out.")
            raise Refused(tr("tag"), why, what)
        number = next_number(page, "D", TAGS)
        made = tuple(hold_tag(office, page, one) for one in pieces)
        sheet = TagSheet(imprint(office, page, tr("Hold and derating tags"), number), made)
        page.add_document(number, TAGS, office.today, "tags", sheet)
        facts = {"number": number, "tags": [one.tag for one in made]}
        page.enter("print tags", by=office.officer.id, at=office.now, facts=facts)
    return sheet

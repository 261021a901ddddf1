"""Labels for pieces, on sheets of labels or as large tags to cut apart: numbered, kept, printed again as they were."""

from collections.abc import Sequence

from inspector.duties.named_pieces import kept_as, open_each
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.tell_whereabouts import gone_words
from inspector.duties.use_limits import marked_for_good
from inspector.gear.judged import Judged
from inspector.gear.label_sizes import CUT_TAG, LABEL_SIZES, LabelSize
from inspector.gear.outcome import Outcome
from inspector.gear.tags import ItemLabel, LabelSheet
from inspector.language import tr
from inspector.paper.item_labels import item_labels, too_long_for
from inspector.paper.page_style import PageSize
from inspector.refused import Refused
from inspector.register.page import Page

LABELS = "label_sheet"  # what the register calls this kind of document


def print_labels(office: Office, tags: Sequence[str], size: str = CUT_TAG.key, start: int = 1) -> Paper:
    """Number, keep and print the labels of these pieces. size: the key of a LabelSize; start: the first free place."""
    return _printed(office, enter_labels(office, tags, size, start))


def print_labels_again(office: Office, number: str) -> Paper:
    """Print labels as they were kept, on the same places."""
    return _printed(office, kept_as(office, LABELS, number, LabelSheet))


def _printed(office: Office, sheet: LabelSheet) -> Paper:
    return put_out(office, sheet.imprint.number, item_labels(sheet, PageSize(office.page)))


def enter_labels(office: Office, tags: Sequence[str], size: str = CUT_TAG.key, start: int = 1) -> LabelSheet:
    """Number and keep the labels; no file is written."""
    chosen = _size(size, start)
    pieces = open_each(office, tags)
    with office.book.page() as page:
        _check_may_be_labelled(page, pieces)
        labels = tuple(_label(one) for one in pieces)
        number = next_number(page, "M", LABELS)
        head = imprint(office, page, tr("Item labels"), number)
        _check_room(labels, chosen, head.club)
        sheet = LabelSheet(head, chosen, start, labels)
        page.add_document(number, LABELS, office.today, "labels", sheet)
        facts = {"number": number, "tags": [one.tag for one in labels]}
        page.enter("print labels", by=office.officer.id, at=office.now, facts=facts)
    return sheet


def _size(key: str, start: int) -> LabelSize:
    """The size with this key; refused with the list of sizes, or where a sheet of it has no such place."""
    size = next((one for one in LABEL_SIZES if one.key == key), None)
    if size is None:
        what = tr("Use one of: {sizes}.", sizes=", ".join(one.key for one in LABEL_SIZES))
        raise Refused(tr("size"), tr("There is no label size “{size}”.", size=key), what)
    if not 1 <= start <= size.count:
        why = tr("A sheet of this size has the places 1 to {count}.", count=size.count)
        raise Refused(tr("start"), why, tr("Count along the rows, from the top left."))
    return size


def _check_may_be_labelled(page: Page, pieces: Sequence[Judged]) -> None:
    """Refuse a label for what is retired or not at hand: on a piece it would read as if it served."""
    names = {person.id: person.name for person in page.people()}
    refused = {}
    for one in pieces:
        why = gone_words(page.whereabouts_of(one.dossier.item), names)
        if one.verdict.outcome is Outcome.RETIRE:
            why = tr("It is retired.")
        if why:
            refused[one.dossier.item.tag] = why
    if refused:
        why = " ".join(f"{tag}: {reason}" for tag, reason in refused.items())
        raise Refused(tr("tag"), why, tr("Leave these pieces out; what is retired gets a tag that says so."))


def _check_room(labels: Sequence[ItemLabel], size: LabelSize, club: str) -> None:
    if long := too_long_for(labels, size, club):
        why = tr("On labels of this size there is no room for: {tags}.", tags=", ".join(long))
        raise Refused(tr("size"), why, tr("Choose a larger size, or the tag to cut apart."))


def _label(one: Judged) -> ItemLabel:
    return ItemLabel(one.dossier.item.tag, one.dossier.kind.name, marked_for_good(one))

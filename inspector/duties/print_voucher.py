"""Print the voucher by which the record of a piece closes: sold, given back to its owner, or made unusable."""

from datetime import date

from msgspec import Struct

from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.tell_history import history_of
from inspector.duties.words_of_then import booked_facts
from inspector.gear.judged import Judged
from inspector.gear.lists import HistoryRow
from inspector.gear.outcome import Outcome
from inspector.gear.papers import Imprint
from inspector.gear.strike import NewDestruction
from inspector.gear.voucher import Voucher
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.language import tr
from inspector.paper.page_style import PageSize
from inspector.paper.voucher import voucher
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.rows import from_body

_KIND = "voucher"
_LEFT = {Where.SOLD, Where.GIVEN_BACK}


class _Left(Struct, frozen=True):
    """The entry by which a piece left. to, by: ids or names as stated."""

    entry: str
    where: Where
    on: date
    to: str
    how: str
    by: str


def print_voucher(office: Office, tag: str) -> Paper:
    """Print the voucher. The first time it is numbered and kept; later the kept words are printed again."""
    stands = enter_voucher(office, tag)
    return put_out(office, stands.imprint.number, voucher(stands, PageSize(office.page)))


def enter_voucher(office: Office, tag: str) -> Voucher:
    """Number and keep the voucher, or take the one that is kept; no file is written."""
    found = open_item(office, tag)
    life = tuple(row for row in history_of(office, tag) if row.what not in {tr("Verdict"), tr("Document")})
    with office.book.page() as page:
        left = _left(page, found)
        return printed_voucher(page, found) or _new_voucher(office, page, found, left, life)


def printed_voucher(page: Page, found: Judged) -> Voucher | None:
    """The voucher that was printed of the entry by which the piece left; None where none was, or it has not left."""
    kept = page.latest_document(_KIND, found.dossier.item.id)
    before = from_body(kept[1], Voucher) if kept else None
    left = _entry(page, found)
    return before if before and left and before.entry == left.entry else None


def _new_voucher(office: Office, page: Page, found: Judged, left: _Left, life: tuple[HistoryRow, ...]) -> Voucher:
    number = next_number(page, "V", _KIND)
    made = _voucher(imprint(office, page, tr("Voucher"), number), page, found, left, life)
    page.add_document(number, _KIND, office.today, found.dossier.item.id, made)
    facts = {"number": number, "tag": found.dossier.item.tag}
    page.enter("print voucher", by=office.officer.id, at=office.now, facts=facts)
    return made


def _voucher(head: Imprint, page: Page, found: Judged, left: _Left, life: tuple[HistoryRow, ...]) -> Voucher:
    not_told = {tr("Tag"), tr("Kind"), tr("Place")}  # its title has the first two, and it lies there no more
    names = {one.id: one.name for one in page.people()}
    return Voucher(
        imprint=head,
        where=left.where,
        entry=left.entry,
        on=left.on,
        tag=found.dossier.item.tag,
        kind_name=found.dossier.kind.name,
        piece=tuple(one for one in booked_facts(found) if one.label not in not_told),
        outcome=found.verdict.outcome,
        headline=found.explanation.headline,
        plain=found.explanation.plain,
        to=names.get(left.to, left.to),
        how=left.how,
        by=names.get(left.by, left.by),
        mind=_mind(left.where, found.verdict.outcome),
        life=life,
    )


def _left(page: Page, found: Judged) -> _Left:
    """How the piece left; refused where it is still with the club."""
    left = _entry(page, found)
    if left is None:
        why = tr("{tag} was neither sold nor given back nor made unusable.", tag=found.dossier.item.tag)
        raise Refused(tr("voucher"), why, tr("Record that first; its voucher is printed with it."))
    return left


def _entry(page: Page, found: Judged) -> _Left | None:
    """The entry by which the piece left; None where it is still with the club."""
    for line in page.history(found.dossier.item.id):
        if line.what == "destruction":
            end = from_body(line.body, NewDestruction)
            return _Left(line.key, Where.DESTROYED, end.on, end.witness, end.how, end.by)
        if line.what == "whereabouts":
            moved = from_body(line.body, NewWhereabouts)
            left = _Left(line.key, moved.where, moved.on, moved.to, moved.why, moved.by)
            return left if moved.where in _LEFT else None
    return None


def _mind(where: Where, outcome: Outcome) -> tuple[str, ...]:
    """What whoever signs should know."""
    if where is Where.DESTROYED:
        return (
            tr("What is left of it must not be put together again, nor sold or given away as gear."),
            tr("Nothing more is logged of it; its history stays in the register."),
        )
    no_word = tr("The club gives no word for its fitness: what stands here is what its register knew on that day.")
    if outcome is Outcome.RETIRE:  # no inspection brings it back, so none is spoken of
        retired = tr("It is RETIRED: it may never be used again, for any load, and is to be made unusable.")
        return (retired, tr("No inspection makes it fit again. Never sell, lend or give it away as gear."), no_word)
    held = {
        Outcome.HOLD: tr("It is ON HOLD: it is not to be used until a competent person has settled what holds it."),
        Outcome.DERATE: tr("It is DERATED: it bears less than is marked on it."),
    }
    seen = tr("Have it inspected by a competent person before it bears a load.")
    return tuple(one for one in (held.get(outcome, ""), no_word, seen) if one)

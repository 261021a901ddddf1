"""Print the voucher by which the record of a piece closes: sold, given back to its owner, or made unusable."""

from dataclasses import dataclass
from datetime import date

from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.tell_history import history_of
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
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
_MOST_ROWS = 12
_LEFT = {Where.SOLD, Where.GIVEN_BACK}


@dataclass(frozen=True, slots=True)
class _Left:
    """The entry by which a piece left. to, by: ids or names as stated."""

    entry: str
    where: Where
    on: date
    to: str
    how: str
    by: str


def print_voucher(office: Office, tag: str) -> Paper:
    """Print the voucher. The first time it is numbered and kept; later the kept words are printed again."""
    found = open_item(office, tag)
    life = tuple(row for row in history_of(office, tag) if row.what not in {tr("Verdict"), tr("Document")})
    with office.book.page() as page:
        left = _left(page, found)
        kept = page.latest_document(_KIND, found.dossier.item.id)
        before = from_body(kept[1], Voucher) if kept else None
        if before is None or before.entry != left.entry:
            number = next_number(page, "V", _KIND)
            names = {one.id: one.name for one in page.people()}
            before = Voucher(
                imprint=imprint(office, page, tr("Voucher"), number),
                where=left.where,
                entry=left.entry,
                on=left.on,
                tag=found.dossier.item.tag,
                kind_name=found.dossier.kind.name,
                piece=tuple(one for one in found.explanation.piece if one.label not in {tr("Tag"), tr("Kind")}),
                outcome=found.verdict.outcome,
                headline=found.explanation.headline,
                plain=found.explanation.plain,
                to=names.get(left.to, left.to),
                how=left.how,
                by=names.get(left.by, left.by),
                mind=_mind(left.where, found.verdict.outcome),
                life=life[:_MOST_ROWS],
                more_count=max(len(life) - _MOST_ROWS, 0),
            )
            page.add_document(number, _KIND, office.today, found.dossier.item.id, before)
            facts = {"number": number, "tag": found.dossier.item.tag}
            page.enter("print voucher", by=office.officer.id, at=office.now, facts=facts)
    return put_out(office, before.imprint.number, voucher(before, PageSize(office.page)))


def _left(page: Page, found: Judged) -> _Left:
    """How the piece left; refused where it is still with the club."""
    item = found.dossier.item
    for line in page.history(item.id):
        if line.what == "destruction":
            end = from_body(line.body, NewDestruction)
            return _Left(line.key, Where.DESTROYED, end.on, end.witness, end.how, end.by)
        if line.what == "whereabouts":
            moved = from_body(line.body, NewWhereabouts)
            if moved.where in _LEFT:
                return _Left(line.key, moved.where, moved.on, moved.to, moved.why, moved.by)
            break
    why = tr("{tag} was neither sold nor given back nor made unusable.", tag=item.tag)
    raise Refused(tr("voucher"), why, tr("Record that first; its voucher is printed with it."))


def _mind(where: Where, outcome: Outcome) -> tuple[str, ...]:
    """What whoever signs should know."""
    if where is Where.DESTROYED:
        return (
            tr("What is left of it must not be put together again, nor sold or given away as gear."),
            tr("Nothing more is logged of it; its history stays in the register."),
        )
    held = {
        Outcome.RETIRE: tr("It is RETIRED: it may never be used again, for any load, and is to be made unusable."),
        Outcome.HOLD: tr("It is ON HOLD: it is not to be used until a competent person has settled what holds it."),
        Outcome.DERATE: tr("It is DERATED: it bears less than is marked on it."),
    }
    said = tr("The club gives no word for its fitness: what stands here is what its register knew on that day.")
    own = tr("Have it inspected by a competent person before it bears a load.")
    return tuple(one for one in (held.get(outcome, ""), said, own) if one)

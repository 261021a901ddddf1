"""The columns of the gear list: one line each, in the order in which they stand."""

from collections.abc import Callable, Iterable
from datetime import date

from msgspec import Struct

from inspector.drawings.marks import outcome_word
from inspector.gear.lists import GearRow, Order
from inspector.language import show_day, tr

TAG, KIND, VERDICT, DUE, MARKED, OWNER, PLACE, MAKER, SERIAL, INSPECTED, USE, WHERE = range(12)


class Column(Struct, frozen=True):
    """One column. key: by which a choice of columns is kept; order: what a click on its head sorts by, if anything;
    width_px: the least it needs at the usual text size; text: what stands in it, which needs the day."""

    key: str
    order: Order | None
    width_px: int
    text: Callable[[GearRow, date], str]


def _verdict(row: GearRow, _today: date) -> str:
    if row.outcome is None:
        return tr("not judged yet")
    word = outcome_word(row.outcome)
    return tr("{outcome}, loosened", outcome=word) if row.unloosened else word


def _due(row: GearRow, today: date) -> str:
    if row.next_due is None:
        return "–"
    day = show_day(row.next_due)
    return tr("{day}, overdue", day=day) if row.next_due < today else day


def _inspected(row: GearRow, _today: date) -> str:
    return show_day(row.inspected_on) if row.inspected_on else tr("never")


COLUMNS = (
    Column("tag", Order.TAG, 104, lambda row, _: row.tag),
    Column("kind", Order.KIND, 160, lambda row, _: row.kind_name),
    Column("verdict", Order.WORST, 108, _verdict),
    Column("due", Order.DUE, 190, _due),
    Column("marked", Order.MARKED, 170, lambda row, _: row.marked),
    Column("owner", Order.OWNER, 130, lambda row, _: row.owner),
    Column("place", Order.PLACE, 130, lambda row, _: row.place),
    Column("maker", Order.MAKER, 130, lambda row, _: row.maker_mark),
    Column("serial", Order.SERIAL, 120, lambda row, _: row.serial),
    Column("inspected", Order.INSPECTED, 128, _inspected),
    Column("use", None, 260, lambda row, _: row.use_line),
    Column("where", None, 220, lambda row, _: row.where),
)
ALWAYS = (TAG, VERDICT)  # a line without them says nothing
USUAL = tuple(one.key for one in COLUMNS[:MAKER])


def column_names() -> tuple[str, ...]:
    """What stands above the columns."""
    return (
        tr("Tag"), tr("Kind"), tr("Verdict"), tr("Next due"), tr("Marked"), tr("Owner"), tr("Place"),
        tr("Maker's mark"), tr("Serial"), tr("Last inspected"), tr("May be used for"), tr("Where it is"),
    )  # fmt: skip


def known(keys: Iterable[str]) -> tuple[str, ...]:
    """Of these keys the columns there are, in their order, with those that are always shown."""
    wanted = {*keys, *(COLUMNS[number].key for number in ALWAYS)}
    return tuple(one.key for one in COLUMNS if one.key in wanted)


def as_table(rows: Iterable[GearRow], keys: Iterable[str], today: date) -> str:
    """Rows as text with tabs between the columns, their names first, for a spreadsheet or a letter."""
    shown = [number for number, one in enumerate(COLUMNS) if one.key in set(keys)]
    names = column_names()
    lines = [[names[number] for number in shown]]
    lines += [[" ".join(COLUMNS[number].text(row, today).split()) for number in shown] for row in rows]
    return "\n".join("\t".join(line) for line in lines)

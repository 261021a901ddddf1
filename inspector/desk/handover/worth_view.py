"""What the gear is worth, for the insurer: by owner and place, and what nobody knows."""

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Type
from inspector.desk.notice import Notice
from inspector.desk.plain import button, column, row, said
from inspector.desk.rig_table import table
from inspector.duties.value_gear import ValueLine, ValueList, sum_words
from inspector.language import tr, tr_n

_SHARES = (3, 4, 1, 3, 5)


def worth_view(found: ValueList, decimal: str, notice: Notice) -> QWidget:
    """The list with its total; decimal: the sign before the hundredths."""
    total = found.total
    if not total.piece_count:
        return column([said(tr("The register holds no gear yet."), Type.HEAD)])
    count = tr_n("{count} piece", "{count} pieces", total.piece_count)
    together = sum_words(total, decimal) or tr("no value known")
    head: list[QWidget] = [said(tr("Together: {count}, {sum}", count=count, sum=together), Type.HEAD)]
    if total.unknown_tags:
        head += [said(_lacking(total), bold=True), said(_how(), Type.SMALL, faint=True)]
    copy = button(tr("Copy as a table"), lambda: _copy(found, decimal, notice))
    cells = [[said(text) for text in _cells(one, decimal)] for one in found.lines]
    return column([*head, row([copy]), table(_heads(), cells, _SHARES)], GRID)


def _lacking(total: ValueLine) -> str:
    if not total.totals:
        return tr("Nobody wrote down what any of it is worth.")
    return tr_n(
        "Too low: nobody wrote down what one piece is worth.",
        "Too low: nobody wrote down what {count} pieces are worth.",
        len(total.unknown_tags),
    )


def _how() -> str:
    return tr("Open a piece and choose “What it is worth” in its menu.")


def _heads() -> tuple[str, ...]:
    return (tr("Owner"), tr("Place"), tr("Pieces"), tr("Value"), tr("Value not known"))


def _cells(one: ValueLine, decimal: str) -> tuple[str, ...]:
    unknown = ", ".join(one.unknown_tags)
    return one.owner or "–", one.place or "–", str(one.piece_count), sum_words(one, decimal) or "–", unknown


def _copy(found: ValueList, decimal: str, notice: Notice) -> None:
    """Into the clipboard, its columns parted as a table calculation takes them."""
    lines = [_heads(), *(_cells(one, decimal) for one in found.lines)]
    QGuiApplication.clipboard().setText("\n".join("\t".join(line) for line in lines))
    notice.tell(tr("The list is copied."), tr("Paste it into a letter or a table calculation."))

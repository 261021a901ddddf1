"""What the close of a count would write, before it is asked for, and what it wrote."""

from collections.abc import Callable

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import Fold, column, said
from inspector.desk.record_parts import section
from inspector.desk.tag_lines import Line, judged_line, tag_lines
from inspector.duties.close_count import Closed
from inspector.duties.tell_count import ClosedPart, CountedPiece, CountTold, closed_parts
from inspector.gear.judged import Judged
from inspector.language import tr, tr_n

_Known = dict[str, CountedPiece]
_AT_ONCE = 60  # of a longer list the rest is told as tags alone
Opens = Callable[[str], object]


def would_write_part(
    count: CountTold, told: Closed, look: Look, opens: Opens, stay: QPushButton, close: QPushButton
) -> QWidget:
    """What closing writes, and the two answers; the one that loses nothing comes first."""
    head = said(tr("Close the count {ref}?", ref=told.ref), Type.DISPLAY)
    says = said(tr("A closed count takes nothing more. This is what closing writes into the register:"))
    answers = QWidget()
    layout = QHBoxLayout(answers)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(2 * GRID)
    layout.addWidget(stay)
    layout.addWidget(close)
    layout.addStretch(1)
    return column([head, says, answers, *_parts(count, told, look, opens)], 2 * GRID)


def written_part(count: CountTold, told: Closed, look: Look, opens: Opens) -> QWidget:
    """What the close wrote, each piece to be opened."""
    head = said(tr("The count {ref} is closed", ref=told.ref), Type.DISPLAY)
    return column([head, said(tr("Press a tag to open its record.")), *_parts(count, told, look, opens)], 2 * GRID)


def _parts(count: CountTold, told: Closed, look: Look, opens: Opens) -> list[QWidget]:
    judged = {one.dossier.item.tag: one for one in told.judged}
    known = {one.tag: one for one in count.pieces}
    made = [said(_seen(told), Type.HEAD)]
    found = closed_parts(told)
    if not found:
        made.append(said(tr("Every piece was seen where it ought to be: nothing in the register changes.")))
    return [*made, *(_part(one, known, judged, look, opens) for one in found)]


def _seen(told: Closed) -> str:
    return tr_n("{count} piece was seen.", "{count} pieces were seen.", len(told.present))


def _part(part: ClosedPart, known: _Known, judged: dict[str, Judged], look: Look, opens: Opens) -> QWidget:
    title = tr("{title} ({count})", title=part.title, count=len(part.pieces))
    if part.are_labels:
        return section(title, said(", ".join(label for label, _ in part.pieces)))
    lines = [_line(tag, place, known, judged) for tag, place in part.pieces[:_AT_ONCE]]
    made: list[QWidget] = [tag_lines(lines, look, opens)]
    if rest := part.pieces[_AT_ONCE:]:
        others = ", ".join(tag for tag, _ in rest)
        made.append(Fold(tr("All others ({count})", count=len(rest)), lambda: said(others)))
    return section(title, *made)


def _line(tag: str, place: str, known: _Known, judged: dict[str, Judged]) -> Line:
    """The tag with kind and place, and with its verdict where the close judged it anew."""
    if tag in judged:
        return judged_line(judged[tag], judged[tag].explanation.headline, place)
    piece = known.get(tag)
    return None, tag, (said(" · ".join(filter(None, (piece.kind_name if piece else "", place or _stands(piece))))),)


def _stands(piece: CountedPiece | None) -> str:
    return piece.place if piece else ""

"""Lines that lead somewhere: the first few at once, the rest behind a fold that tells how many they are."""

from collections.abc import Callable, Sequence
from typing import TypeVar

from PySide6.QtWidgets import QHBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import Fold, column, row, said
from inspector.desk.tag_lines import Line, Open, tag_lines
from inspector.drawings.marks import outcome_word
from inspector.gear.outcome import Outcome
from inspector.language import tr_n

Part = TypeVar("Part")
AT_ONCE = 6
_MORE_AT_ONCE = 20  # a fold of hundreds would stop the window while it opens


def folded(lines: Sequence[Line], look: Look, opens: Open, at_once: int = AT_ONCE) -> QWidget:
    """The lines, those beyond the first few in folds."""
    return in_folds(lines, lambda some: tag_lines(some, look, opens), at_once)


def in_folds(parts: Sequence[Part], make: Callable[[Sequence[Part]], QWidget], at_once: int) -> QWidget:
    """What is made of the first few parts, then a fold with the next ones, and so on."""
    shown, rest = parts[:at_once], parts[at_once:]
    if not rest:
        return make(shown)
    title = tr_n("{count} more", "{count} more", len(rest))
    return column([make(shown), Fold(title, lambda: in_folds(rest, make, _MORE_AT_ONCE))])


def piece_line(outcome: Outcome | None, tag: str, kind: str, *texts: str, aside: QWidget | None = None) -> Line:
    """A line with the kind and the word of its outcome, then small texts, the last one faint; one at least is said.

    aside: what stands at its right end.
    """
    head = f"{kind} · {outcome_word(outcome)}" if outcome else kind
    words: list[QWidget] = [said(head, bold=True)]
    *main, last = (text for text in texts if text)
    words += [said(text, Type.SMALL) for text in main]
    words.append(said(last, Type.SMALL, faint=bool(main)))
    return outcome, tag, (beside_words(words, aside),) if aside else words


def beside_words(words: Sequence[QWidget], aside: QWidget) -> QWidget:
    """Words with a control at their right end."""
    made = QWidget()
    layout = QHBoxLayout(made)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(2 * GRID)
    layout.addWidget(column(words, 0), 1)
    layout.addWidget(aside)
    return made


def in_line(*controls: QWidget) -> QWidget:
    """Controls side by side, no wider than their words."""
    return row(controls, 2 * GRID)

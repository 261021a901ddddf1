"""The list of counts: the open ones first, then what was counted before."""

from collections.abc import Callable, Iterable
from functools import partial

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Type
from inspector.desk.plain import bare_grid, button, column, row, said, short
from inspector.desk.record_parts import section
from inspector.duties.take_stock import CountState
from inspector.language import show_day, tr

Open = Callable[[CountState], object]


def counts_part(states: tuple[CountState, ...], opens: Open, begin: Callable[[], object]) -> QWidget:
    """Every count, and the way to begin one."""
    head = said(tr("Stock-take"), Type.DISPLAY)
    says = said(tr("Look for each piece and mark it. Nothing is taken for there because nobody said that it is not: "
                   "what nobody looked for is told as not seen."))  # fmt: skip
    begins = row([button(tr("Begin a count"), begin, rank="first")])
    if not states:
        empty = said(tr("Nothing was counted yet. Begin a count of everything, of one place or of a vehicle."))
        return column([head, says, begins, empty], 2 * GRID)
    still_open = [one for one in reversed(states) if one.closed is None]
    closed = [one for one in reversed(states) if one.closed]
    none_open = said(tr("No count is open."), faint=True)
    parts = [section(tr("Still open"), _lines(still_open, opens) if still_open else none_open)]
    if closed:
        parts.append(section(tr("Closed"), _lines(closed, opens)))
    return column([head, says, begins, *parts], 2 * GRID)


def _lines(states: Iterable[CountState], opens: Open) -> QWidget:
    made, grid = bare_grid(1, 2)
    for number, one in enumerate(states):
        name = tr("Open the count {ref}", ref=one.ref)
        grid.addWidget(button(one.ref, partial(opens, one), rank="tag", name=name), number, 0)
        grid.addWidget(said(one.scope or tr("everything in store")), number, 1)
        grid.addWidget(said(state_words(one)), number, 2)
        grid.addWidget(short(_days(one), faint=True), number, 3)
    return made


def state_words(one: CountState) -> str:
    """How far a count is, or was."""
    left = one.expected - one.seen - one.absent
    return tr("{seen} of {total} seen, {absent} not there, {left} not looked for", seen=one.seen, total=one.expected,
              absent=one.absent, left=left)  # fmt: skip


def _days(one: CountState) -> str:
    if one.closed:
        return tr("closed {day}", day=show_day(one.closed))
    return tr("begun {day}", day=show_day(one.begun))

"""The list of recalls, the open ones first, and what a notice would mean before anything is held."""

from collections.abc import Callable, Iterable, Sequence
from functools import partial

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Type
from inspector.desk.plain import Fold, bare_grid, button, column, row, said, short
from inspector.desk.record_parts import section
from inspector.desk.rig_table import table
from inspector.desk.tag_lines import tag_button
from inspector.duties.recall_search import Match, Searched
from inspector.duties.tell_recall import RecallRow
from inspector.language import tr

Does = Callable[[], object]
Opens = Callable[[str], object]


def recalls_part(rows: Iterable[RecallRow], opens: Opens, look: Does) -> QWidget:
    """Every recall, and what can be begun here."""
    every = tuple(rows)
    head = said(tr("Recalls"), Type.DISPLAY)
    says = said(tr("A maker, a regulator or the club calls gear in. First look which pieces are meant; then all of "
                   "them are held at once, and those of which nobody can tell as well."))  # fmt: skip
    begins = row([button(tr("Look by a notice"), look, rank="first")])
    if not every:
        return column([head, says, begins, said(tr("No recall was entered."))], 2 * GRID)
    groups = ((tr("Still open"), [one for one in every if not one.is_closed]),
              (tr("Closed"), [one for one in every if one.is_closed and not one.is_withdrawn]),
              (tr("Withdrawn"), [one for one in every if one.is_withdrawn]))  # fmt: skip
    parts = [section(title, _lines(some, opens)) for title, some in groups if some]
    return column([head, says, begins, *parts], 2 * GRID)


def _lines(rows: Iterable[RecallRow], opens: Opens) -> QWidget:
    made, grid = bare_grid(2)
    for number, one in enumerate(rows):
        name = tr("Open the recall {ref}", ref=one.ref)
        grid.addWidget(button(one.ref, partial(opens, one.ref), rank="tag", name=name), number, 0)
        grid.addWidget(short(one.day), number, 1)
        grid.addWidget(said(one.notice), number, 2)
        left = tr("Not settled: {count}", count=one.left)
        grid.addWidget(short(one.state if one.is_closed else left, faint=True), number, 3)
    return made


def found_part(found: Searched, opens: Opens, enter: Does, again: Does) -> QWidget:
    """What a notice would mean; nothing is held yet."""
    head = said(tr("What the notice means"), Type.DISPLAY)
    count = len(found.held)
    says = said(tr("Nothing is held yet. By entering the notice the pieces under the first two headings are held: "
                   "those that are meant, and those of which nobody can tell."))  # fmt: skip
    begins = row([button(tr("Hold them: enter the notice"), enter, rank="first"), button(tr("Look again"), again)])
    none = [] if count else [said(tr("No piece of the register is meant, and none is to be asked. Entered all the "
                                     "same, the notice holds what is booked in later."))]  # fmt: skip
    return column([head, says, begins, *none, *match_parts(found, opens)], 2 * GRID)


def match_parts(found: Searched, opens: Opens) -> list[QWidget]:
    """Certain, to ask, and folded what is not meant; each with why."""
    certain = tr("Meant for certain ({count})", count=len(found.certain))
    asked = tr("To ask: nobody can tell ({count})", count=len(found.to_ask))
    groups = ((certain, found.certain), (asked, found.to_ask))
    parts: list[QWidget] = [section(title, _matches(some, opens)) for title, some in groups if some]
    return [*parts, *not_meant_part(found, opens)]


def not_meant_part(found: Searched, opens: Opens) -> list[QWidget]:
    """What is not meant, with the reason, folded; and how many pieces are no more."""
    title = tr("Not meant, with the reason ({count})", count=len(found.not_meant))
    parts: list[QWidget] = [Fold(title, lambda: _matches(found.not_meant, opens))] if found.not_meant else []
    if found.destroyed:
        words = tr("Pieces made unusable, which were not looked at: {count}", count=found.destroyed)
        parts.append(said(words, Type.SMALL, faint=True))
    return parts


def _matches(found: Sequence[Match], opens: Opens) -> QWidget:
    heads = (tr("Tag"), tr("Piece"), tr("Marked"), tr("Where it is"), tr("Why"))
    rows: list[list[QWidget]] = [
        [tag_button(one.item.tag, opens), said(one.kind_name), said(one.marks), said(one.place), said(one.why)]
        for one in found
    ]
    return table(heads, rows, (2, 3, 3, 4, 5))

"""The parts of a record, each set from data: the verdict, its reasons, the drawings, the history."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Mark
from inspector.desk.piece.life_picture import LifePicture
from inspector.desk.piece.walked import Readable, readable
from inspector.desk.plain import Fold, bare_grid, button, column, facts, fill, hairline, said, short
from inspector.drawings.marks import outcome_word
from inspector.drawings.pin_shear import pin_shear_picture
from inspector.drawings.strap_damage import strap_damage_picture
from inspector.drawings.strength_bars import has_strength_bars, strength_bars
from inspector.drawings.wall_history import wall_history
from inspector.drawings.wall_section import wall_section
from inspector.drawings.wall_words import How
from inspector.drawings.waterfall import has_waterfall, waterfall
from inspector.duties.tell_damage import pin_wear, strap_damage
from inspector.gear.judged import Judged
from inspector.gear.life import Life
from inspector.gear.lists import HistoryRow, PaperRow
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Fact, Reason, Status
from inspector.language import show_day, tr
from inspector.units import System

_TOP = Qt.AlignmentFlag.AlignTop
_HISTORY_AT_ONCE = 8
_PICTURE_MM = 88.0  # as wide as the other pictures beside a verdict


def verdict_part(judged: Judged, look: Look, mark_px: int = 64, *, headline: bool = True) -> QWidget:
    """The mark with its word, what the verdict says, and what it means. headline: whether to say the first reason."""
    outcome, words = judged.verdict.outcome, judged.explanation
    told = words.headline.removeprefix(f"{outcome_word(outcome)}: ")
    lines = [said(outcome_word(outcome), Type.DISPLAY)]
    lines += [said(told[:1].upper() + told[1:], Type.HEAD)] if headline else []
    lines.append(said(words.plain))
    if outcome in {Outcome.FIT, Outcome.DERATE}:
        lines.append(said(tr("Use: {line}", line=words.use_line), faint=True))
    return beside(Mark(outcome, look, mark_px), column(lines))


def beside(mark: QWidget, text: QWidget) -> QWidget:
    """A text with its mark before it."""
    made = QWidget()
    layout = QHBoxLayout(made)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(2 * GRID)
    layout.addWidget(mark, 0, _TOP)
    layout.addWidget(text, 1)
    return made


def section(title: str, *parts: QWidget) -> QWidget:
    """A part of the page: hairline, title, and what follows."""
    return column([hairline(), said(title, Type.HEAD), *parts])


def reasons_part(reasons: Sequence[Reason], look: Look) -> QWidget:
    """Every reason at once: sentence, value, limit, source, and what would release it."""
    return section(tr("Why"), column([reason_part(one, look) for one in reasons], gap=2 * GRID))


def reason_part(reason: Reason, look: Look) -> QWidget:
    """One reason behind the mark it stands for."""
    lines = [
        (tr("Found"), reason.value),
        (tr("Wanted"), reason.limit),
        (tr("Applies"), reason.purposes),
        (tr("Because"), reason.why),
        (tr("Source"), reason.source),
        (tr("To settle it"), reason.release),
    ]
    shown = facts([line for line in lines if line[1]], size=Type.SMALL)
    return beside(Mark(reason.outcome, look, 20), column([said(reason.sentence, bold=True), shown], gap=GRID // 2))


def passes_part(passes: Sequence[Reason]) -> Fold:
    """The rules it passed or that only note something, folded away."""
    count = sum(one.status is Status.PASSES for one in passes)
    return Fold(tr("Rules it passed ({count})", count=count), lambda: column([_pass(one) for one in passes]))


def _pass(one: Reason) -> QWidget:
    value = tr("Found {value}; wanted {limit}. {source}", value=one.value, limit=one.limit, source=one.source)
    return column([said(one.sentence), said(value, Type.SMALL, faint=True)], gap=0)


def terms_part(terms: Sequence[Fact]) -> Fold:
    """The trade's words used above, folded away, with their meaning."""
    return Fold(
        tr("Words of the trade ({count})", count=len(terms)), lambda: facts((one.label, one.text) for one in terms)
    )


def facts_part(title: str, lines: Sequence[Fact]) -> QWidget:
    """Labelled figures under a title."""
    return section(title, facts((line.label, line.text) for line in lines))


def drawings_part(judged: Judged, look: Look, system: System, how: How) -> list[QWidget]:
    """The wall as it is and as it was, what became of the strength and what gives way first, what was found
    on a strap, how a pin bears; where they tell it."""
    verdict, pictures = judged.verdict, []
    if verdict.wall:
        pictures += [wall_section(verdict.wall, system, how), wall_history(verdict.wall, verdict.on, system, how)]
    if has_waterfall(verdict.capacity):
        pictures.append(waterfall(verdict.capacity, system))
    if has_strength_bars(verdict.capacity):
        pictures.append(strength_bars(verdict.capacity, system))
    if damage := strap_damage(judged.dossier):
        pictures.append(strap_damage_picture(damage, _PICTURE_MM, system))
    if pin := pin_wear(judged.dossier):
        pictures.append(pin_shear_picture(pin, narrow=True))
    return [column([said(picture.title, Type.HEAD), readable(picture, look)]) for picture in pictures]


def life_part(life: Life, look: Look) -> QWidget:
    """Its life on one axis of time."""
    told = tr("A number in a frame stands for that many entries too close to each other to be drawn.")
    picture = LifePicture(life, look)
    return section(picture.drawing.title, Readable(picture), said(told, Type.SMALL, faint=True))


def papers_part(papers: Sequence[PaperRow], again: Callable[[str], object]) -> QWidget:
    """The documents that name the piece, the newest first; those that can be printed again have a button for it."""
    if not papers:
        return section(tr("Documents printed"), said(tr("No document names it yet."), faint=True))
    made, grid = bare_grid(1)
    for number, paper in enumerate(papers):
        grid.addWidget(short(show_day(paper.on), faint=True), number, 0)
        grid.addWidget(said(tr("{what} {number}", what=paper.what, number=paper.number)), number, 1)
        if paper.again:
            name = tr("Print {number} again", number=paper.number)
            grid.addWidget(button(tr("Print again"), partial(again, paper.number), name=name), number, 2)
    return section(tr("Documents printed"), made)


def history_part(rows: Sequence[HistoryRow]) -> QWidget:
    """What happened, newest first; the older part folded away."""
    parts: list[QWidget] = [_history(rows[:_HISTORY_AT_ONCE])]
    if older := rows[_HISTORY_AT_ONCE:]:
        parts.append(Fold(tr("Earlier ({count})", count=len(older)), lambda: _history(older)))
    return section(tr("History"), *parts)


def _history(rows: Sequence[HistoryRow]) -> QWidget:
    made, grid = bare_grid(2)
    for number, row in enumerate(rows):
        grid.addWidget(short(show_day(row.on), faint=True), number, 0, _TOP)
        grid.addWidget(short(row.what), number, 1, _TOP)
        grid.addWidget(said(f"{row.text} · {row.by}" if row.by else row.text), number, 2)
    return made


def cautions_part(cautions: Sequence[str]) -> QWidget:
    """What stands on every verdict."""
    made = QWidget()
    fill(QVBoxLayout(made), [hairline(), *(said(one, Type.SMALL, faint=True) for one in cautions)], GRID // 2)
    return made

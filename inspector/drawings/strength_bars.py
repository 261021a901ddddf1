"""The ways in which a steel part may give way, sound and as it is, the one that goes first on top."""

from inspector.drawings.bar_rows import Bar, Row, rows
from inspector.drawings.shapes import Drawing, Ink, Shape
from inspector.drawings.wording import LEADING_MM, note
from inspector.gear.capacity import Capacity, SteelStrength
from inspector.language import tr
from inspector.units import Dimension, System, show

_WIDTH_MM = 88.0
_TOP_MM = 0.5
_MOST_NOTE_LINES = 7


def has_strength_bars(capacity: Capacity) -> bool:
    """Whether a picture tells anything: a strength in newtons, or steel that is gone."""
    return any(one.now_n is not None or (one.left_ratio or 1.0) < 1 for one in capacity.strengths)


def strength_bars(capacity: Capacity, system: System = System.METRIC) -> Drawing:
    """The picture, 88 mm wide and as high as it has rows."""
    ways = _strengths(capacity, system)
    shapes, top_mm = rows(ways, _TOP_MM, _WIDTH_MM)
    said: list[Shape] = note(_note(capacity), 0.5, top_mm, _WIDTH_MM - 1.0, _MOST_NOTE_LINES)
    height_mm = top_mm + len(said) * LEADING_MM + 0.8
    describes = "; ".join(f"{row.words}: {row.value}" for row in ways) + "."
    return Drawing(_WIDTH_MM, height_mm, (*shapes, *said), _title(capacity), describes)


def _title(capacity: Capacity) -> str:
    if not _in_newtons(capacity):
        return tr("Where most steel is gone")
    return tr("The strength of its parts") if capacity.is_marking_lower else tr("What gives way first")


def _in_newtons(capacity: Capacity) -> bool:
    return capacity.governing is not None and capacity.governing.now_n is not None


def _strengths(capacity: Capacity, system: System) -> list[Row]:
    """The way that gives first on top, then the others in order, last what is shown beside."""
    most_n = max((one.sound_n or 0.0 for one in capacity.strengths), default=0.0)
    told = [one for one in capacity.strengths if not (_in_newtons(capacity) and _is_whole_share(one))]
    order = sorted(told, key=lambda one: (one is not capacity.governing, one.beside, _left(one)))
    first = None if capacity.is_marking_lower else capacity.governing
    return [_strength(one, one is first, most_n, system) for one in order]


def _is_whole_share(one: SteelStrength) -> bool:
    """A share of steel with nothing gone tells nothing beside bars of newtons."""
    return one.sound_n is None and one.left_ratio is not None and one.left_ratio >= 1


def _left(one: SteelStrength) -> float:
    """Newtons where they are known, else a share; never both kinds for one order of rank."""
    return one.now_n if one.now_n is not None else (one.left_ratio or 0.0)


def _strength(one: SteelStrength, is_first: bool, most_n: float, system: System) -> Row:
    """Sound as an outline, what is left as a full bar in it; the first lasting set as a tick."""
    full = 1.0 if one.sound_n is None else one.sound_n / most_n
    left = full * (one.left_ratio or 0.0)
    sound = tr("not reckoned in force") if one.sound_n is None else _force(one.sound_n, system)
    outline = Bar(0.0, full, Ink.THIN, Ink.FAINT, one.beside, _tells(one, tr("as new"), sound))
    fill, now = Ink.BAND if one.beside else Ink.STEEL, _tells(one, tr("now"), _value(one, system))
    bars = (outline, Bar(0.0, left, fill, Ink.LIMIT if is_first else Ink.INK, tells=now))
    said = tr("First lasting set at {pull}", pull=_force(one.set_n or 0.0, system))
    ticks = ((one.set_n / most_n, said),) if one.set_n is not None and most_n else ()
    words = _first_words(one) if is_first else one.part
    ink = Ink.LIMIT if is_first else (Ink.FAINT if one.beside else Ink.INK)
    return Row(words, _value(one, system), bars, ticks, ink, is_first)


def _tells(one: SteelStrength, when: str, value: str) -> str:
    """The part with its strength or what is left of it, and what was assumed."""
    told = tr("{part}, {when}: {value}", part=one.part, when=when, value=value)
    return tr("{said} ({how})", said=told, how=one.because) if one.because else told


def _value(one: SteelStrength, system: System) -> str:
    if one.left_ratio is None:
        return tr("not known")
    if one.now_n is None:
        return tr("{share} left", share=show(one.left_ratio, Dimension.RATIO))
    return _force(one.now_n, system)


def _first_words(one: SteelStrength) -> str:
    return tr("most: {part}", part=one.part) if one.now_n is None else tr("first: {part}", part=one.part)


def _note(capacity: Capacity) -> str:
    """What the bars mean, what they rest on and what they leave out."""
    said = []
    if any(one.set_n is not None for one in capacity.strengths):
        said.append(tr("Thick stroke: pull of the first lasting set."))
    if capacity.governing:
        because = capacity.governing.because
        said.append(tr("{because}.", because=because[:1].upper() + because[1:]))
    if capacity.is_marking_lower:
        said.append(tr("The marking is lower than all of these, and stands."))
    if capacity.left_out:
        said.append(tr("Not in the sum: {what}.", what="; ".join(capacity.left_out)))
    return " ".join(said)


def _force(force_n: float, system: System) -> str:
    return show(force_n, Dimension.FORCE, system)

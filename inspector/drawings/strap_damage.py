"""A strap laid flat with what was found on it: at its place where somebody wrote the place, else beside it."""

from collections.abc import Iterator

from inspector.drawings.damage_signs import damage_sign
from inspector.drawings.shapes import Anchor, Circle, Drawing, Ink, Line, RoundedRect, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, length_text, wrapped
from inspector.gear.damage import DamagePlace, StrapDamage, StrapMark
from inspector.language import show_day, tr
from inspector.units import System

_EDGE_MM, _EYE_MM, _SEAM_MM = 1.0, 13.0, 8.0
_BALLOON_Y_MM, _BALLOON_MM = 2.4, 2.1
_STRAP_TOP_MM, _STRAP_MM = 8.6, 6.0
_MIDDLE_MM = _STRAP_TOP_MM + _STRAP_MM / 2
_SCALE_MM = 17.6
_LIST_TOP_MM = 22.8
_TEXT_MM, _GAP_MM, _LEAST_MM = 16.0, 1.6, 6.0
_BOLD = 1.15  # `wrapped` measures plain letters
_APART_MM = 2 * _BALLOON_MM + 0.6


def strap_damage_picture(damage: StrapDamage, width_mm: float, system: System = System.METRIC) -> Drawing:
    """The sketch, width_mm wide and as high as its list. It claims no place that nobody wrote down."""
    listed, height_mm = _listed(damage.marks, width_mm, system)
    shapes = (*_strap(width_mm), *_scale(damage, width_mm), *_marks(damage, width_mm), *listed)
    described = " ".join(_says(number, one, system) for number, one in enumerate(damage.marks, 1))
    return Drawing(width_mm, height_mm, shapes, tr("What was found on the strap, and where"), described)


def _strap(width_mm: float) -> list[Shape]:
    """The webbing with an eye and its stitching at each end."""
    top, left, right = _STRAP_TOP_MM, _EDGE_MM, width_mm - _EDGE_MM
    body = RoundedRect((left + _EYE_MM, top), right - left - 2 * _EYE_MM, _STRAP_MM, fill=Ink.BAND, width_mm=0.3)
    eyes = [
        RoundedRect((x, top - 0.8), _EYE_MM + 1.0, _STRAP_MM + 1.6, 3.2, fill=Ink.BAND, width_mm=0.3)
        for x in (left, right - _EYE_MM - 1.0)
    ]
    holes = [
        RoundedRect((x, top + 1.6), _EYE_MM - 5.0, _STRAP_MM - 3.2, 1.4, fill=Ink.PAPER, width_mm=0.3)
        for x in (left + 2.2, right - _EYE_MM + 2.8)
    ]
    return [*eyes, *holes, body, *_stitching(left + _EYE_MM), *_stitching(right - _EYE_MM - _SEAM_MM)]


def _stitching(left_mm: float) -> list[Shape]:
    """Rows of stitches over the doubled end."""
    rows = (_STRAP_TOP_MM + 1.2, _MIDDLE_MM, _STRAP_TOP_MM + _STRAP_MM - 1.2)
    return [
        Line((left_mm + 0.6, y), (left_mm + _SEAM_MM - 0.6, y), ink=Ink.FAINT, width_mm=0.25, dash_mm=(0.8, 0.5))
        for y in rows
    ]


def _ends(width_mm: float) -> tuple[float, float]:
    """Where the length begins and ends: at the inner ends of the eyes, as it is measured."""
    return _EDGE_MM + _EYE_MM - 2.8, width_mm - _EDGE_MM - _EYE_MM + 2.8


def _scale(damage: StrapDamage, width_mm: float) -> list[Shape]:
    """The length from eye to eye; where nobody wrote it the sketch says that it has no scale."""
    left, right = _ends(width_mm)
    words = tr("{length} from eye to eye", length=damage.length) if damage.length_m else ""
    words = words or tr("Its length is not written down: the sketch has no scale.")
    line = Line((left, _SCALE_MM), (right, _SCALE_MM), ink=Ink.FAINT, width_mm=0.2)
    ticks = [Line((x, _SCALE_MM - 1.0), (x, _SCALE_MM + 1.0), ink=Ink.FAINT, width_mm=0.2) for x in (left, right)]
    at = (width_mm / 2, _SCALE_MM + 3.6)
    return [line, *ticks, Text(at, words, LABEL_MM, anchor=Anchor.MIDDLE, ink=Ink.FAINT)]


def _marks(damage: StrapDamage, width_mm: float) -> list[Shape]:
    """The signs at their places, each with its number above; numbers that would touch are pushed apart."""
    placed = sorted(
        (x, number, one) for number, one in enumerate(damage.marks, 1) for x in _places(one, damage.length_m, width_mm)
    )
    shapes: list[Shape] = []
    apart_mm = min(_APART_MM, (width_mm - 2 * _BALLOON_MM - 0.4) / max(len(placed) - 1, 1))
    balloon_x = _BALLOON_MM + 0.2 - apart_mm
    for at, (x, number, one) in enumerate(placed):
        after = (len(placed) - at - 1) * apart_mm
        balloon_x = min(max(x, balloon_x + apart_mm), width_mm - _BALLOON_MM - 0.2 - after)
        line = Line((balloon_x, _BALLOON_Y_MM + _BALLOON_MM), (x, _STRAP_TOP_MM - 0.2), width_mm=0.2)
        shapes += [*damage_sign(one.sort, (x, _MIDDLE_MM)), line, *_balloon(balloon_x, _BALLOON_Y_MM, number)]
    return shapes


def _places(one: StrapMark, length_m: float | None, width_mm: float) -> tuple[float, ...]:
    """Where it is drawn on the strap, in mm from the left; at both ends where nobody wrote at which; none for none."""
    left, right = _ends(width_mm)
    seam = _EDGE_MM + _EYE_MM + _SEAM_MM / 2
    if one.place is DamagePlace.MEASURED and one.from_end_m is not None and length_m:
        return (left + one.from_end_m / length_m * (right - left),)
    return {
        DamagePlace.MIDDLE: ((left + right) / 2,),
        DamagePlace.SEAMS: (seam, width_mm - seam),
        DamagePlace.EYES: (_EDGE_MM + 5.0, width_mm - _EDGE_MM - 5.0),
    }.get(one.place, ())


def _balloon(x: float, y: float, number: int) -> list[Shape]:
    words = Text((x, y + 0.35 * LABEL_MM), str(number), LABEL_MM, anchor=Anchor.MIDDLE, bold=True)
    return [Circle((x, y), _BALLOON_MM, fill=Ink.PAPER, width_mm=0.3), words]


def _listed(marks: tuple[StrapMark, ...], width_mm: float, system: System) -> tuple[list[Shape], float]:
    """Each damage with its number, its sign and all that is known of it; and how high that is."""
    shapes: list[Shape] = []
    top = _LIST_TOP_MM
    for number, one in enumerate(marks, 1):
        foot = top + _LEAST_MM
        shapes += [*_balloon(2.6, top + 2.6, number), *damage_sign(one.sort, (10.0, top + 2.9))]
        for line, bold in _lines(one, width_mm - _TEXT_MM - _EDGE_MM, system):
            shapes.append(Text((_TEXT_MM, top + 0.8 * LEADING_MM), line, LABEL_MM, bold=bold))
            top += LEADING_MM
        top = max(top, foot) + _GAP_MM
    return shapes, top - _GAP_MM + 0.4


def _lines(one: StrapMark, width_mm: float, system: System) -> Iterator[tuple[str, bool]]:
    for line in wrapped(_head(one, system), width_mm, LABEL_MM * _BOLD):
        yield line, True
    for line in wrapped(tr("Written on {day}: “{note}”", day=show_day(one.on), note=one.note), width_mm):
        if one.note:
            yield line, False


def _head(one: StrapMark, system: System) -> str:
    return tr("{check}, {grade}: {place}", check=one.name, grade=one.grade, place=_place_words(one, system))


def _place_words(one: StrapMark, system: System) -> str:
    if one.place is DamagePlace.MEASURED and one.from_end_m is not None:
        length = length_text(one.from_end_m, system)
        return tr("{length} from one end, by the note (drawn from the left end)", length=length)
    return {
        DamagePlace.MIDDLE: tr("in the middle, by the note"),
        DamagePlace.SEAMS: tr("in the stitching of one end; nobody wrote which, so both are marked"),
        DamagePlace.EYES: tr("in one of the eyes; nobody wrote which, so both are marked"),
    }.get(one.place, tr("where along the strap is not written down; only the kind of damage is shown"))


def _says(number: int, one: StrapMark, system: System) -> str:
    return tr("{number}. {head}.", number=number, head=_head(one, system))

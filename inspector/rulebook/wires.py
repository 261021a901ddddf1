"""How many broken wires a wire rope may show, by its build. A rope of unknown build is held by the fewest wires that
end any rope, and retired by the fewest that end any rope on a drum of many layers."""

from inspector.gear.verdict import Known
from inspector.language import tr
from inspector.mechanics.wire_rope import BreakSpread, CountedLength, Lay, Spooling
from inspector.mechanics.wire_rope import discard_wires_count as discard
from inspector.mechanics.wire_rope import lay_discard_wires_count as lay_discard
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import Quantity, number
from inspector.units import Dimension

_FEWEST_COUNT, _LISTED_COUNT = 1, 300
_SHORT, _LONG = CountedLength.SIX_DIAMETERS, CountedLength.THIRTY_DIAMETERS


def wires_held(case: Case) -> Quantity:
    """Broken wires over six diameters that call for a competent person: Lang lay, or three in one strand of a lay."""
    count = discard(_outer_wires(case) or _FEWEST_COUNT, _SHORT, Lay.LANG)
    return _count(case, min(count, lay_discard(BreakSpread.ONE_STRAND)))


def wires_discard(case: Case) -> Quantity:
    """Broken wires over six diameters that end the rope: ordinary lay, at most those of a winch's lay length."""
    return _count(case, min(_ended(case, _SHORT), lay_discard(BreakSpread.ANYWHERE)))


def wires_held_long(case: Case) -> Quantity:
    """Broken wires over thirty diameters that call for a competent person: Lang lay."""
    return _count(case, discard(_outer_wires(case) or _FEWEST_COUNT, _LONG, Lay.LANG))


def wires_discard_long(case: Case) -> Quantity:
    """Broken wires over thirty diameters that end the rope: ordinary lay."""
    return _count(case, _ended(case, _LONG))


def _ended(case: Case, length: CountedLength) -> int:
    """By the rope's build, as if it ran in one layer; unknown, by the fewest of a drum of many layers."""
    outer = _outer_wires(case)
    if outer is None:
        return discard(_FEWEST_COUNT, length, Lay.ORDINARY, Spooling.MANY_LAYERS)
    return discard(outer, length, Lay.ORDINARY)


def _outer_wires(case: Case) -> int | None:
    """The wires of the outer strands, where they were written down and the table lists them."""
    figure = case.dossier.item.size("outer_wires")
    known = figure is not None and _FEWEST_COUNT <= round(figure.si) <= _LISTED_COUNT
    return round(figure.si) if figure is not None and known else None


def _count(case: Case, count: int) -> Quantity:
    outer = _outer_wires(case)
    said = tr("{count} wires in the outer strands", count=outer) if outer else tr("build of the rope not written down")
    return number(count, Dimension.COUNT, said, Known.STATED)

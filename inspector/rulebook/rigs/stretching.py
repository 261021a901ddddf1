"""The straps in a line as one: how the pull grows with the stretch, stiff for the peak and soft for the energy.

A strap's stiffness comes from its marked strength, never from what is left of it: a worn strap is not a softer one.
"""

from msgspec import Struct

from inspector.language import tr
from inspector.mechanics import strap_curve
from inspector.refused import Refused
from inspector.rulebook.rigs.layout import Layout, Part
from inspector.units import STANDARD_GRAVITY_M_PER_S2

_LINEAR = 1.0


class Stretcher(Struct, frozen=True):
    """One strap or line: its marked strength in newtons, and its stretch at break in metres, least and most.

    guessed: nobody knows its strength.
    """

    tag: str
    breaking_n: float
    length_m: float
    least_m: float
    most_m: float
    guessed: bool = False


def stretchers(layout: Layout, parts: tuple[Part, ...]) -> tuple[Stretcher, ...]:
    """What stretches among these parts."""
    return tuple(_stretcher(layout, part) for part in parts if part.text is not None and part.text.stretch_least)


def _stretcher(layout: Layout, part: Part) -> Stretcher:
    assert part.piece is not None and part.text is not None
    item, book = part.piece.judged.dossier.item, layout.book
    size = item.size("length")
    if size is None or size.si <= 0:
        why = tr("The length of {tag} was not written down.", tag=part.tag)
        raise Refused(tr("length"), why, tr("Book it in with its length as new."))
    marked_n = part.piece.judged.verdict.capacity.begins_n
    least, most = book.setting(part.text.stretch_least), book.setting(part.text.stretch_most)
    strength_n = marked_n or _as_strong_as_any(layout)
    return Stretcher(part.tag, strength_n, size.si, least * size.si, max(most, least) * size.si, marked_n is None)


def _as_strong_as_any(layout: Layout) -> float:
    """A strap of unknown strength may be the strongest that the published band allows the heaviest vehicle."""
    heaviest_kg = max(one.gvm.si for one in layout.facts.vehicles.values())
    return layout.book.setting("strap_band_high") * heaviest_kg * STANDARD_GRAVITY_M_PER_S2


class Curve(Struct, frozen=True):
    """Several straps in a row as one of the weakest's strength: newtons, metres at that pull, and the power."""

    breaking_n: float
    stretch_m: float
    power: float


def curves(given: tuple[Stretcher, ...], *, most: bool = False) -> tuple[Curve, ...]:
    """One curve for each power that the bound takes. Straps in a row bear one pull and add their stretches."""
    weakest_n = min(one.breaking_n for one in given)
    found = []
    for power in strap_curve.BOUND_POWERS:
        stretch_m = sum(
            strap_curve.curve_stretch_m(weakest_n, one.breaking_n, one.most_m if most else one.least_m, power)
            for one in given
        )
        found.append(Curve(weakest_n, stretch_m, power))
    return tuple(found)


def peak_n(given: tuple[Curve, ...], drive_n: float, mass_kg: float, speed_m_per_s: float) -> float:
    """The greatest peak of the curves, the bogged vehicle as an anchor."""
    return max(_peak_n(one, drive_n, mass_kg, speed_m_per_s) for one in given)


def _peak_n(one: Curve, drive_n: float, mass_kg: float, speed_m_per_s: float) -> float:
    return strap_curve.stiffening_peak_n(drive_n, one.breaking_n, one.stretch_m, one.power, mass_kg, speed_m_per_s)


def greatest_speed(given: tuple[Curve, ...], limit_n: float, drive_n: float, mass_kg: float) -> float:
    """The speed in m/s at which the first of the curves reaches the limit; 0 where a pull from a stand does."""
    return min(
        strap_curve.stiffening_speed_m_per_s(limit_n, drive_n, one.breaking_n, one.stretch_m, one.power, mass_kg)
        for one in given
    )


def energy_j(given: tuple[Stretcher, ...], drive_n: float, mass_kg: float, speed_m_per_s: float) -> float:
    """The most that the line may store at its peak: stiff or soft, whatever the shape of its curve."""
    both = (*curves(given), *curves(given, most=True))
    return max(
        strap_curve.curve_energy_j(
            _peak_n(one, drive_n, mass_kg, speed_m_per_s), one.breaking_n, one.stretch_m, one.power
        )
        for one in both
    )


def energy_at_j(given: tuple[Stretcher, ...], pull_n: float) -> float:
    """The most that the line may store under a steady pull."""
    return max(
        strap_curve.curve_energy_j(pull_n, one.breaking_n, one.stretch_m, one.power) for one in curves(given, most=True)
    )


def stiffness_n_per_m(given: tuple[Stretcher, ...]) -> float:
    """The stiffness of the whole line as a straight line, each strap as stiff as it may be."""
    linear = next(one for one in curves(given) if one.power == _LINEAR)
    return linear.breaking_n / linear.stretch_m

"""Pictures of the bench: a strap beside the band that suits a vehicle, and the energy that speed puts into a line."""

from inspector.drawings.axes import Scale, round_ticks
from inspector.drawings.bench_parts import WIDTH_MM, Compared, Curve, bars, curve_shapes, framed, head
from inspector.drawings.shapes import Anchor, Drawing, Ink, Line, Polygon, RoundedRect, Shape, Text
from inspector.drawings.wording import LABEL_MM
from inspector.gear.bench import Worked
from inspector.language import tr
from inspector.units import Dimension, System, show

_LEFT_MM, _RIGHT_MM = 4.0, WIDTH_MM - 4.0
_BAND_TOP_MM, _BAND_FOOT_MM = 15.0, 25.0
_LEAST_WEIGHTS = 5.0
_MOST_SPEED = 30 / 3.6
_STEPS = 30


def strap_picture(worked: Worked, system: System) -> Drawing:
    """The strap on a scale of weights of the lighter vehicle, with the band that suits; below, pull and stretch."""
    strength, peak, give = (worked.amount(key) for key in ("strength_n", "peak_n", "give_m"))
    shapes = [head(tr("Strength of the strap, in weights of the lighter vehicle"), 0.0), *_band(worked, system)]
    compared = (
        Compared(tr("breaks at"), show(strength, Dimension.FORCE, system), strength),
        Compared(tr("peak of the pull at the same speed"), show(peak, Dimension.FORCE, system), peak),
    )
    more, top_mm = bars(compared, 33.0)
    length = worked.amount("length_m")
    pulled, after_mm = bars(
        (Compared(tr("stretches, of its length"), show(round(give, 2), Dimension.LENGTH, system), give),),
        top_mm,
        length,
    )
    note = tr("Inside the band a strap stretches enough to be gentle and is strong enough to hold.")
    return framed(worked, [*shapes, *more, *pulled], after_mm, note)


def _band(worked: Worked, system: System) -> list[Shape]:
    """The scale with the band between its ends and the mark of this strap."""
    ratio, low, high = (worked.amount(key) for key in ("ratio", "low", "high"))
    scale = Scale(0.0, max(_LEAST_WEIGHTS, high * 1.6), _LEFT_MM, _RIGHT_MM)
    start, end, at = scale.at(low), scale.at(high), scale.at(min(ratio, scale.high))
    suits = tr("suits")
    spots = ((_LEFT_MM, start, tr("too weak")), (start, end, suits), (end, _RIGHT_MM, tr("too strong")))
    y = (_BAND_TOP_MM + _BAND_FOOT_MM) / 2
    shapes: list[Shape] = [
        RoundedRect((start, _BAND_TOP_MM), end - start, _BAND_FOOT_MM - _BAND_TOP_MM, fill=Ink.BAND, tells=suits),
        Line((_LEFT_MM, _BAND_FOOT_MM), (_RIGHT_MM, _BAND_FOOT_MM), width_mm=0.3),
        *(Text(((one + other) / 2, y + 1.0), words, LABEL_MM, anchor=Anchor.MIDDLE) for one, other, words in spots),
    ]
    for value in (0.0, low, high):
        x = scale.at(value)
        words = show(value, Dimension.FACTOR, system)
        shapes += [Line((x, _BAND_FOOT_MM), (x, _BAND_FOOT_MM + 1.0)),
                   Text((x, _BAND_FOOT_MM + 4.4), words, LABEL_MM, anchor=Anchor.MIDDLE)]  # fmt: skip
    ink = Ink.INK if low <= ratio <= high else Ink.LIMIT
    tip = ((at, _BAND_TOP_MM), (at - 1.6, _BAND_TOP_MM - 4.4), (at + 1.6, _BAND_TOP_MM - 4.4))
    text = tr("this strap {ratio}") if ratio <= scale.high else tr("this strap {ratio}, far off this scale")
    here = text.format(ratio=show(ratio, Dimension.FACTOR, system))
    anchor = Anchor.END if at > WIDTH_MM * 0.75 else Anchor.START if at < WIDTH_MM * 0.2 else Anchor.MIDDLE
    return [
        *shapes,
        Polygon(tip, ink=None, fill=ink),
        Text((at, _BAND_TOP_MM - 5.4), here, LABEL_MM, anchor=anchor, ink=ink, bold=True),
    ]


def speed_picture(worked: Worked, system: System) -> Drawing:
    """The energy over the speed with the dial's place on it; below, the pull, and how fast two parts may fly."""
    shapes = [head(tr("Energy that comes into the line, by speed"), 0.0), *_energy(worked, system)]
    peak, strength = worked.amount("peak_n"), worked.amount("strength_n")
    pulls, top_mm = bars(
        (
            Compared(tr("the strap breaks at"), show(strength, Dimension.FORCE, system), strength),
            Compared(tr("peak of the pull"), show(peak, Dimension.FORCE, system), peak, weak=peak >= strength),
        ),
        38.0,
    )
    thrown, soft = worked.amount("thrown"), worked.amount("soft")
    flown, after_mm = bars(
        (
            Compared(tr("the part may leave at up to"), show(thrown, Dimension.SPEED, system), thrown),
            Compared(tr("a soft shackle, same energy in the line"), show(soft, Dimension.SPEED, system), soft),
        ),
        top_mm,
    )
    note = tr("All of the energy is taken as motion, without air: nobody printed a share that is safe to count on.")
    return framed(worked, [*shapes, *pulls, *flown], after_mm, note)


def _energy(worked: Worked, system: System) -> list[Shape]:
    """Half the mass times the square of the speed, as the bench's own sum gives it at the dial."""
    energy, speed = worked.amount("energy_j"), worked.amount("speed")
    most = max(_MOST_SPEED, speed)
    places = tuple((most * n / _STEPS, energy * (most * n / _STEPS / speed) ** 2) for n in range(_STEPS + 1))
    across = Scale(0.0, most, 20.0, _RIGHT_MM - 4.0)
    up = Scale(0.0, places[-1][1] * 1.02, 31.0, 7.0)
    return curve_shapes(
        Curve(
            across,
            up,
            round_ticks(most, Dimension.SPEED, system),
            round_ticks(up.high, Dimension.ENERGY, system),
            places,
            (speed, energy),
            tr("Here: {energy}", energy=show(energy, Dimension.ENERGY, system)),
        )
    )

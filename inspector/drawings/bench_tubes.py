"""Pictures of the bench: a ball mount's weld pulled open, and a tube's section as new, now and by then."""

from inspector.drawings.axes import Scale, round_ticks
from inspector.drawings.bench_parts import HEAD_MM, WIDTH_MM, Compared, Curve, bars, curve_shapes, framed, head
from inspector.drawings.change import moved
from inspector.drawings.joint_parts import weld_section
from inspector.drawings.shapes import Anchor, Drawing, Ink, Line, Polygon, Shape, Text
from inspector.drawings.tube import tube
from inspector.drawings.wall_points import Frame
from inspector.drawings.wording import LABEL_MM
from inspector.gear.bench import Worked
from inspector.gear.verdict import WallForecast
from inspector.language import tr
from inspector.units import Dimension, System, show

_DROP_PER_M = 190.0
_ROOM_MM = 6.0  # what a figure beside the lever needs
_THROAT_MM = 2400.0  # of the picture for a metre of throat
_TUBE_MM = 30.0
_CHART_LEFT_MM = 84.0
_MOST_YEARS = 30.0


def weld_picture(worked: Worked, system: System) -> Drawing:
    """The shank with its plate, the pull at the ball hole; the throat as new and as it is; below, what it bears."""
    off, straight, beside = (worked.amount(key) for key in ("off_m", "straight_n", "beside_n"))
    far = show(off, Dimension.LENGTH, system)
    drop = off * _DROP_PER_M
    section = weld_section((), (far,) if drop > _ROOM_MM else (), drop)
    shapes: list[Shape] = [
        head(tr("A shackle in the empty ball hole"), 0.0),
        *(moved(shape, -1.0, -2.0) for shape in section),
        *_throat(worked, system),
    ]
    compared = (
        Compared(tr("weld bears along the middle"), show(straight, Dimension.FORCE, system), straight),
        Compared(tr("weld bears at the ball hole"), show(beside, Dimension.FORCE, system), beside, weak=True),
    )
    more, top_mm = bars(compared, 54.0)
    note = tr("The pull acts {off} off the middle of the shank. Not to scale; the weld is enlarged.", off=far)
    return framed(worked, [*shapes, *more], top_mm, note)


def _throat(worked: Worked, system: System) -> list[Shape]:
    """The weld's triangle in a corner, as new and what rust leaves."""
    new, left = worked.amount("throat_m"), worked.amount("left_m")
    corner = (91.0, 34.0)

    def triangle(throat_m: float) -> tuple[tuple[float, float], ...]:
        leg = min(throat_m * _THROAT_MM * 1.4142 / 2, 20.0)
        return corner, (corner[0] + leg, corner[1]), (corner[0], corner[1] - leg)

    said = tr("{left} of {new}", left=show(left, Dimension.LENGTH, system), new=show(new, Dimension.LENGTH, system))
    return [
        head(tr("The weld's throat"), 89.0),
        Polygon(triangle(new), fill=Ink.THIN, dash_mm=(1.0, 0.8), tells=tr("Weld as new")),
        Polygon(triangle(left), fill=Ink.STEEL, tells=tr("What rust leaves")),
        Line((corner[0], HEAD_MM + 3.0), (corner[0], corner[1]), width_mm=0.8),
        Line(corner, (WIDTH_MM - 2.0, corner[1]), width_mm=0.8),
        Text((WIDTH_MM - 1.0, corner[1] + 4.6), said, LABEL_MM, anchor=Anchor.END, bold=True),
    ]


def wall_picture(worked: Worked, system: System) -> Drawing:
    """The section now and by then, and the wall over the years down to its limit; below, what is left."""
    years = show(worked.amount("years"), Dimension.YEARS, system)
    shapes: list[Shape] = [
        head(tr("Now"), 0.0),
        *_tube(worked, "now_m", 1.0),
        head(tr("After {years}", years=years), 37.0),
        *_tube(worked, "then_m", 38.0),
        *_chart(worked, system),
    ]
    left, bears = worked.amount("left_ratio"), worked.amount("bears_n")
    compared = (
        Compared(tr("strength in bending by then"), show(left, Dimension.RATIO, system), left, weak=_is_below(worked)),
    )
    more, top_mm = bars(compared, 42.0, 1.0)
    note = tr(
        "To scale. Light: steel that is gone, inside, where nobody sees it. Deep line: the limit, {must}. Both walls "
        "bear {bears} at the pin by then.",
        must=show(worked.amount("must_m"), Dimension.LENGTH, system),
        bears=show(bears, Dimension.FORCE, system),
    )
    return framed(worked, [*shapes, *more], top_mm, note)


def _is_below(worked: Worked) -> bool:
    return worked.amount("then_m") < worked.amount("must_m")


def _tube(worked: Worked, wall: str, left_mm: float) -> list[Shape]:
    new, rate = worked.amount("new_m"), worked.amount("rate_m_per_year")
    outside = worked.amount("outside_m")
    forecast = WallForecast(
        nominal_m=new, outside_m=outside, required_m=worked.amount("must_m"), required_because=tr("the limit"),
        history=(), long_term_m_per_year=None, short_term_m_per_year=None, floor_m_per_year=0.0,
        rate_m_per_year=rate, rate_because="", wall_now_m=worked.amount(wall), estimated=False, life_years=None,
        reaches_required_on=None, next_reading_due=None,
    )  # fmt: skip
    return tube(forecast, Frame(left_mm, HEAD_MM, _TUBE_MM, _TUBE_MM / outside))


def _chart(worked: Worked, system: System) -> list[Shape]:
    """The wall over the years as a line, the limit dashed."""
    new, now, must, rate = (worked.amount(key) for key in ("new_m", "now_m", "must_m", "rate_m_per_year"))
    across = Scale(0.0, _MOST_YEARS, _CHART_LEFT_MM, WIDTH_MM - 6.5)
    up = Scale(0.0, max(new, must) * 1.05, HEAD_MM + _TUBE_MM - 4.0, HEAD_MM + 1.0)
    gone = min(now / rate, _MOST_YEARS) if rate > 0 else _MOST_YEARS
    places = ((0.0, now), (gone, max(now - rate * gone, 0.0)), (_MOST_YEARS, max(now - rate * _MOST_YEARS, 0.0)))
    years = worked.amount("years")
    ends = round_ticks(_MOST_YEARS, Dimension.YEARS, system)[::3]
    curve = Curve(
        across, up, ends, round_ticks(up.high, Dimension.LENGTH, system), places,
        (years, worked.amount("then_m")), tr("Wall by then"),
    )  # fmt: skip
    y = up.at(must)
    return [
        head(tr("Wall over the years"), _CHART_LEFT_MM - 11.0),
        *curve_shapes(curve),
        Line((across.start_mm, y), (across.end_mm, y), ink=Ink.LIMIT, width_mm=0.5, dash_mm=(1.6, 0.8)),
        Text((across.end_mm, y - 0.9), tr("limit"), LABEL_MM, anchor=Anchor.END, ink=Ink.LIMIT, bold=True),
    ]

"""How the pull grows: with the speed, and with how deep the vehicle is stuck."""

from inspector.drawings.axes import Scale, round_ticks
from inspector.drawings.bar_rows import Bar, Row, rows
from inspector.drawings.extent import Box, extent
from inspector.drawings.labels import Labels
from inspector.drawings.rig_words import force_text, part_name
from inspector.drawings.shapes import Anchor, Circle, Drawing, Ink, Line, Polyline, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.rig_result import RigResult
from inspector.language import tr
from inspector.units import Dimension, System, show, show_bound

_WIDTH_MM = 86.0
_LEFT_MM, _RIGHT_MM = 19.0, 82.0  # of the chart
_TOP_MM, _FOOT_MM = 7.0, 41.0
_AXIS_MM = 46.5  # below the words of the speed axis
_AIR = 1.08  # over the greatest pull


def has_speeds(result: RigResult) -> bool:
    """Whether speed changes the pull at all."""
    return len(result.sensitivity.speeds) > 1 and result.sensitivity.speeds[-1][0] > 0


def has_depths(result: RigResult) -> bool:
    """Whether the published scales tell of other depths."""
    return bool(result.sensitivity.depths)


def speed_chart(result: RigResult, system: System = System.METRIC) -> Drawing:
    """The greatest pull over the speed as the line comes taut, with the greatest speed that no part forbids."""
    points = result.sensitivity.speeds
    across = Scale(0.0, max(speed for speed, _ in points), _LEFT_MM, _RIGHT_MM)
    up = Scale(0.0, _AIR * max(force for _, force in points) or 1.0, _FOOT_MM, _TOP_MM)
    run = tuple((across.at(speed), up.at(force)) for speed, force in points)
    shapes: list[Shape] = [*_axes(across, up, system), Polyline(run, width_mm=0.7, tells=tr("Greatest pull"))]
    shapes += [
        Circle(at, 0.8, fill=Ink.INK, tells=_point_says(point, system)) for at, point in zip(run, points, strict=True)
    ]
    shapes += _limit(result, across, shapes, system)
    said = _speed_note(result, system)
    shapes, high_mm = _with_note(shapes, said, _AXIS_MM)
    describes = " ".join((*(_point_says(point, system) + ";" for point in points), said))
    return Drawing(_WIDTH_MM, high_mm, tuple(shapes), tr("Greatest pull by speed"), describes)


def _axes(across: Scale, up: Scale, system: System) -> list[Shape]:
    """Level hairlines with forces, ticks with speeds."""
    shapes: list[Shape] = [Text((0.5, 3.4), tr("greatest pull in the line"), LABEL_MM)]
    for tick in round_ticks(up.high, Dimension.FORCE, system):
        y = up.at(tick.value)
        shapes.append(Line((_LEFT_MM, y), (_RIGHT_MM, y), ink=Ink.HAIR, width_mm=0.15))
        shapes.append(Text((_LEFT_MM - 1.2, y + 1.0), tick.words, LABEL_MM, anchor=Anchor.END))
    ticks = round_ticks(across.high, Dimension.SPEED, system)
    for number, tick in enumerate(ticks):
        x = across.at(tick.value)
        shapes.append(Line((x, _FOOT_MM), (x, _FOOT_MM + 1.0)))
        if number % 2 == 0 or len(ticks) <= 5:
            anchor = Anchor.END if x > _RIGHT_MM - 6 else Anchor.MIDDLE
            shapes.append(
                Text((x + (3.5 if anchor is Anchor.END else 0), _FOOT_MM + 4.0), tick.words, LABEL_MM, anchor=anchor)
            )
    return [*shapes, Line((_LEFT_MM, _FOOT_MM), (_RIGHT_MM, _FOOT_MM), width_mm=0.3)]


def _limit(result: RigResult, across: Scale, drawn: list[Shape], system: System) -> list[Shape]:
    """An upright line at the greatest speed, with its words where there is room."""
    speed = result.sensitivity.greatest_speed_m_per_s
    if speed is None or speed > across.high:
        return []
    x = across.at(max(speed, 0.0))
    line = Line((x, _TOP_MM), (x, _FOOT_MM), ink=Ink.LIMIT, width_mm=0.6, dash_mm=(1.6, 0.8),
                tells=tr("Greatest speed: {speed}", speed=_limit_speed(speed, system)))  # fmt: skip
    labels = Labels(Box(_LEFT_MM, 0.0, _WIDTH_MM, _FOOT_MM))
    for shape in (*drawn, line):
        if isinstance(shape, Text | Circle):
            labels.keep_clear(extent(shape))
    run = next(shape for shape in drawn if isinstance(shape, Polyline))
    for start, end in zip(run.points, run.points[1:], strict=False):
        labels.keep_line_clear(Line(start, end, width_mm=0.7))
    words = tr("limit {speed}", speed=_limit_speed(speed, system))
    spots = ((x - 1.5, _TOP_MM + 3.0), (x + 1.5, _FOOT_MM - 2.0), (x + 1.5, _TOP_MM + 3.0), (x - 1.5, _FOOT_MM - 2.0))
    for at in spots:
        anchor = Anchor.END if at[0] < x else Anchor.START
        label = labels.take(Text(at, words, LABEL_MM, anchor=anchor, bold=True, ink=Ink.LIMIT))
        if label:
            return [line, *label]
    return [line]


def _speed_note(result: RigResult, system: System) -> str:
    known = result.sensitivity
    if known.greatest_speed_m_per_s is None:
        return tr("Speed as the line comes taut. No speed brings every part within what it may bear.")
    if known.greatest_speed_m_per_s > known.speeds[-1][0]:
        return tr("Speed as the line comes taut. Within these speeds no part bears more than it may.")
    return tr(
        "Speed as the line comes taut. At {speed} the first part, {part}, has used up what it may bear.",
        speed=_limit_speed(known.greatest_speed_m_per_s, system),
        part=part_name(known.limits_at) or tr("not named"),
    )


def _point_says(point: tuple[float, float], system: System) -> str:
    return tr("{speed}: {force}", speed=_speed(point[0], system), force=force_text(point[1], system))


def _speed(speed_m_per_s: float, system: System) -> str:
    return show(speed_m_per_s, Dimension.SPEED, system)


def _limit_speed(speed_m_per_s: float, system: System) -> str:
    """Rounded down: never milder in print than it is."""
    return show_bound(speed_m_per_s, Dimension.SPEED, system, least=False)


def depth_chart(result: RigResult, system: System = System.METRIC) -> Drawing:
    """What each depth asks for, as bars by the words of the published scales, and what the method brings."""
    depths = result.sensitivity.depths
    most_n = max([result.load.offered_n, *(needed for _, _, needed, _ in depths)]) or 1.0
    offered = (
        (
            result.load.offered_n / most_n,
            tr("What this method brings: {force}", force=force_text(result.load.offered_n, system)),
        ),
    )
    here = result.rig.conditions.bogged_in
    made = []
    for key, word, needed_n, likely_n in depths:
        is_here = here is not None and key == here
        words = tr("here: {depth}", depth=word) if is_here else word
        bars = [Bar(0.0, needed_n / most_n, Ink.STEEL if is_here else Ink.BAND, Ink.INK, tells=words)]
        if likely_n is not None:
            bars.append(
                Bar(0.0, likely_n / most_n, None, Ink.FAINT, dashed=True, tells=tr("Pull as the vehicle gives way"))
            )
        made.append(Row(words, force_text(needed_n, system), tuple(bars), offered, bold=is_here))
    shapes, top_mm = rows(made, 0.5, _WIDTH_MM)
    said = _depth_note(result, system)
    shapes, high_mm = _with_note(shapes, said, top_mm)
    describes = "; ".join(f"{row.words}: {row.value}" for row in made) + ". " + said
    return Drawing(_WIDTH_MM, high_mm, tuple(shapes), tr("What it takes by how deep it is stuck"), describes)


def _depth_note(result: RigResult, system: System) -> str:
    brings = tr("Thick stroke: what this method brings, {force}.", force=force_text(result.load.offered_n, system))
    if all(likely is None for _, _, _, likely in result.sensitivity.depths):
        return brings
    return f"{brings} " + tr("Dashed: pull in the line if the vehicle gives way.")


def _with_note(shapes: list[Shape], text: str, top_mm: float) -> tuple[list[Shape], float]:
    """The shapes with all words of a note below them, and how high it all is."""
    lines = wrapped(text, _WIDTH_MM - 1.0)
    note = [Text((0.5, top_mm + (number + 0.78) * LEADING_MM), line, LABEL_MM) for number, line in enumerate(lines)]
    return [*shapes, *note], top_mm + len(lines) * LEADING_MM + 1.0

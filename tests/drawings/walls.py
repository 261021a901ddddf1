"""Random walls for hypothesis, and what every drawing has to keep to."""

from datetime import date

from hypothesis import strategies as st

from inspector.drawings.extent import Box, extent
from inspector.drawings.shapes import Drawing, Text
from inspector.gear.verdict import WallForecast, WallPoint
from inspector.gear.wall_band import BandAt, BandFrom, WallBand

DAYS = st.dates(date(1995, 1, 1), date(2060, 12, 31))
UNREAD = ["at pin hole", "left", "bottom, by the weld"]
LENGTHS = st.floats(0.0, 0.02)
POINTS = st.builds(
    WallPoint,
    on=DAYS,
    read_m=LENGTHS,
    relied_m=LENGTHS,
    point=st.sampled_from(["top", "left", "right face", "bottom", "", "30 mm from the mouth, behind the pin hole"]),
    upper_bound=st.booleans(),
    as_typed=st.sampled_from(["4.3 mm", "0.17 in", "11/64 in", "about four and three tenths of a millimetre 4.3 mm"]),
)


@st.composite
def walls(draw: st.DrawFn) -> WallForecast:
    """Any wall a register could hold, and some it should not."""
    history = tuple(sorted(draw(st.lists(POINTS, max_size=12)), key=lambda point: point.on))
    return WallForecast(
        nominal_m=draw(st.floats(0.001, 0.02)),
        outside_m=draw(st.none() | st.floats(0.02, 0.15)),
        required_m=draw(st.floats(0.0002, 0.02)),
        required_because=draw(st.sampled_from(["", "club setting", "bearing of the hitch pin at " * 8])),
        history=history,
        long_term_m_per_year=draw(st.none() | st.floats(0.0, 0.005)) if history else None,
        short_term_m_per_year=None,
        floor_m_per_year=0.0,
        rate_m_per_year=draw(st.floats(0.0, 0.005)),
        rate_because="some rate",
        wall_now_m=draw(LENGTHS),
        estimated=not history,
        life_years=draw(st.floats(0.0, float("inf"))),
        reaches_required_on=draw(st.none() | st.dates(date(2000, 1, 1), date(2160, 1, 1))),
        next_reading_due=None,
        unread_points=tuple(draw(st.lists(st.sampled_from(UNREAD), unique=True))),
        band=draw(st.none() | bands()),
    )


@st.composite
def bands(draw: st.DrawFn) -> WallBand:
    """Any band, drawn on the chart or not."""
    days = sorted(draw(st.lists(DAYS, max_size=9, unique=True)))
    at = tuple(BandAt(day, *sorted(draw(st.tuples(LENGTHS, LENGTHS, LENGTHS)))) for day in days)
    made = draw(st.sampled_from(list(BandFrom)))
    end = draw(st.none() | DAYS)
    return WallBand(made, "bottom", len(days), end, None, draw(st.none() | DAYS), reach_on=end, drawn=at)


def assert_inside(drawing: Drawing) -> None:
    """Every shape lies within the frame."""
    frame = Box(0.0, 0.0, drawing.width_mm, drawing.height_mm)
    outside = [shape for shape in drawing.shapes if not frame.holds(extent(shape), slack_mm=1e-6)]
    assert not outside, outside


def texts(drawing: Drawing) -> list[Text]:
    """The texts of a drawing."""
    return [shape for shape in drawing.shapes if isinstance(shape, Text)]


def said(drawing: Drawing) -> str:
    """All texts of a drawing in one line."""
    return " ".join(text.text for text in texts(drawing))


def assert_texts_apart(drawing: Drawing) -> None:
    """No text lies on another."""
    boxes = [(text.text, extent(text)) for text in texts(drawing)]
    for number, (text, box) in enumerate(boxes):
        clashes = [other for other, taken in boxes[number + 1 :] if box.overlaps(taken)]
        assert not clashes, (text, clashes)

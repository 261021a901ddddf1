"""The vehicle from above: every part with its place, its mark and its word; what is not known is said."""

from inspector.drawings.extent import text_width_mm
from inspector.drawings.shapes import Drawing, Text
from inspector.drawings.vehicle_plan import vehicle_plan
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.lists import GearRow
from inspector.gear.outcome import Outcome


def row(tag: str, outcome: Outcome | None = Outcome.FIT) -> GearRow:
    return GearRow(tag, "recovery_point", "Recovery point", "", "", "", "", outcome, "", None)


def words(drawing: Drawing) -> list[str]:
    return [one.text for one in drawing.shapes if isinstance(one, Text)]


def at(drawing: Drawing, text: str) -> tuple[float, float]:
    return next(one.at for one in drawing.shapes if isinstance(one, Text) and one.text.startswith(text))


FULL = (
    (Fitted("V", End.FRONT, Side.LEFT), row("RP-1")),
    (Fitted("V", End.FRONT, Side.MIDDLE), row("WI-1", Outcome.DERATE)),
    (Fitted("V", End.FRONT, Side.MIDDLE), row("FL-1")),
    (Fitted("V", End.FRONT, Side.RIGHT), row("RP-2", Outcome.HOLD)),
    (Fitted("V", End.REAR, Side.UNKNOWN), row("HR-1", Outcome.RETIRE)),
    (Fitted("V", End.REAR, Side.RIGHT), row("RP-4", None)),
    (Fitted("V"), row("TB-1")),
)


def test_a_part_stands_where_it_sits() -> None:
    drawn = vehicle_plan("V wagon", FULL)
    front, rear = at(drawn, "front")[1], at(drawn, "rear")[1]
    assert at(drawn, "RP-1")[0] < at(drawn, "front")[0] < at(drawn, "RP-2")[0]
    assert at(drawn, "WI-1")[1] < front < rear < at(drawn, "HR-1")[1]
    assert front < at(drawn, "RP-4")[1] < at(drawn, "HR-1")[1]


def test_no_outcome_is_told_by_its_mark_alone_and_silence_is_said() -> None:
    told = words(vehicle_plan("V wagon", FULL))
    assert "RP-2, Hold" in told and "HR-1, Retire" in told and "RP-4, not judged yet" in told
    assert "Nobody wrote down where these sit: TB-1." in told
    assert "Nobody wrote down on which side these sit: HR-1." in told


def test_its_words_lie_within_the_frame_and_on_no_other_word() -> None:
    many = tuple((Fitted("V", end, side), row(f"LONG-{end}-{side}-{n}-OF-A-CLUB"[:24])) for end in (End.FRONT, End.REAR)
                 for side in Side for n in range(3))  # fmt: skip
    for parts in (FULL, many, ()):
        drawn = vehicle_plan("V wagon", parts)
        boxes = [box(one) for one in drawn.shapes if isinstance(one, Text)]
        assert all(left >= -0.01 and right <= drawn.width_mm and top >= 0 and foot <= drawn.height_mm + 0.01
                   for left, top, right, foot in boxes)  # fmt: skip
        for number, one in enumerate(boxes):
            assert not any(overlaps(one, other) for other in boxes[number + 1 :])


def test_whoever_does_not_see_it_hears_every_part() -> None:
    assert "front, left: RP-1, Fit" in vehicle_plan("V wagon", FULL).describes
    assert vehicle_plan("V wagon", ()).describes == "No part is written down for it."


def box(text: Text) -> tuple[float, float, float, float]:
    wide = text_width_mm(text.text, text.size_mm)
    left = text.at[0] - {"start": 0.0, "middle": wide / 2, "end": wide}[text.anchor.value]
    return left, text.at[1] - 0.75 * text.size_mm, left + wide, text.at[1] + 0.2 * text.size_mm


def overlaps(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]

"""Which strengths a steel piece has: by its kind, worked out once for a case, nothing for textiles."""

from collections.abc import Callable

from inspector.rulebook.case import Case
from inspector.rulebook.steel_bars import ball_strengths, insert_strengths, pin_strengths, shackle_strengths
from inspector.rulebook.steel_bolts import point_strengths
from inspector.rulebook.steel_parts import Found
from inspector.rulebook.steel_tubes import bar_strengths, tube_strengths

_BY_KIND: dict[str, Callable[[Case], Found]] = {
    "hitch_receiver": tube_strengths,
    "ball_mount": tube_strengths,
    "tow_bar": bar_strengths,
    "hitch_pin": pin_strengths,
    "tow_ball": ball_strengths,
    "receiver_insert": insert_strengths,
    "recovery_point": point_strengths,
    "bow_shackle": shackle_strengths,
    "dee_shackle": shackle_strengths,
}
_NONE = Found()


def strengths_of(case: Case) -> Found:
    """The strengths of a steel piece with known sizes."""
    work_out = _BY_KIND.get(case.dossier.kind.key)
    return case.once("steel strengths", work_out) if work_out else _NONE

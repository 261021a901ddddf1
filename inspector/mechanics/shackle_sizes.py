"""What size a shackle of a given working load is, and the reverse. Grade decides: size alone never tells the load."""

from enum import StrEnum

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2


class ShackleSteel(StrEnum):
    """Steel of a dee shackle: mild, or higher tensile (at least 540 MPa)."""

    MILD = "mild"
    HIGHER_TENSILE = "higher tensile"


class SizeList(StrEnum):
    """Which list of bow shackles, grade 6 or S, quenched and tempered."""

    AUSTRALIAN = "australian"
    US_EN = "us en"


_WIDER_MM = 1000 * (1 + checked.SAME_RATIO)
_TONNE_N = 1000 * STANDARD_GRAVITY_M_PER_S2
# working load t, jaw a; body d1, pin d2 in mild steel; d1, d2 in higher tensile steel; mm
_DEE_MM: tuple[tuple[float, float, float, float, float, float], ...] = (
    *((1.0, 20, 13, 15, 11, 12), (1.6, 25, 17, 19, 13, 15), (2.0, 28, 19, 21, 15, 17), (2.5, 31, 21, 24, 17, 19)),
    *((3.2, 35, 24, 27, 19, 21), (4.0, 40, 26, 30, 21, 23), (5.0, 44, 29, 33, 23, 26), (6.3, 50, 33, 37, 26, 29)),
    *((8.0, 56, 37, 42, 29, 33), (10.0, 63, 41, 47, 33, 37), (12.5, 70, 46, 53, 36, 42), (16.0, 79, 52, 60, 41, 47)),
    *((20.0, 89, 59, 67, 46, 52), (25.0, 99, 65, 75, 51, 59), (32.0, 112, 74, 84, 58, 66), (40.0, 125, 83, 94, 65, 74)),
    *((50.0, 140, 92, 106, 72, 83), (63.0, 157, 104, 119, 81, 93), (80.0, 177, 117, 134, 91, 105)),
)
_STEEL_COLUMN: dict[ShackleSteel, int] = {ShackleSteel.MILD: 2, ShackleSteel.HIGHER_TENSILE: 4}
# bow mm, pin mm, working load t
_BOW_MM: dict[SizeList, tuple[tuple[float, float, float], ...]] = {
    SizeList.AUSTRALIAN: (
        *((6, 8, 0.5), (8, 10, 0.75), (10, 11, 1.0), (11, 13, 1.5), (13, 16, 2.0)),
        *((16, 19, 3.2), (19, 22, 4.7), (22, 25, 6.5), (25, 29, 8.5)),
    ),
    SizeList.US_EN: (
        *((6, 8, 0.5), (8, 10, 0.75), (9, 11, 1.0), (11, 13, 1.5), (13, 16, 2.0), (16, 19, 3.25)),
        *((19, 22, 4.75), (22, 25, 6.5), (25, 28, 8.5), (28, 32, 9.5), (32, 35, 12.0)),
    ),
}


def dee_body_m(working_load_n: float, steel: ShackleSteel) -> float:
    """Thickness of the body of a dee shackle that is to carry a load.

    Formula: table, d1 of the first row that carries as much
    Valid: load above 0 and up to 80 t
    Source: lloyds_loose_gear

    >>> round(dee_body_m(3.2 * 9806.65, ShackleSteel.MILD), 4)
    0.024
    """
    return _carrying_mm(working_load_n)[_STEEL_COLUMN[ShackleSteel(steel)]] / 1000


def dee_pin_m(working_load_n: float, steel: ShackleSteel) -> float:
    """Thickness of the pin of a dee shackle that is to carry a load.

    Formula: table, d2 of the first row that carries as much
    Valid: load above 0 and up to 80 t
    Source: lloyds_loose_gear

    >>> round(dee_pin_m(3.2 * 9806.65, ShackleSteel.MILD), 4)
    0.027
    """
    return _carrying_mm(working_load_n)[_STEEL_COLUMN[ShackleSteel(steel)] + 1] / 1000


def dee_jaw_m(working_load_n: float) -> float:
    """Width of the jaw of a dee shackle that is to carry a load, in either steel.

    Formula: table, a of the first row that carries as much
    Valid: load above 0 and up to 80 t
    Source: lloyds_loose_gear

    >>> round(dee_jaw_m(3.2 * 9806.65), 4)
    0.035
    """
    return _carrying_mm(working_load_n)[1] / 1000


def dee_load_n(body_m: float, pin_m: float, steel: ShackleSteel = ShackleSteel.MILD) -> float:
    """Working load of a dee shackle of these sizes; mild steel unless another is proved.

    Formula: table, the last row whose d1 and d2 are both reached
    Valid: at least the first row: body 13 mm and pin 15 mm in mild, 11 and 12 mm in higher tensile steel
    Source: lloyds_loose_gear

    >>> round(dee_load_n(0.019, 0.022) / 9806.65, 2)
    2.0
    """
    column = _STEEL_COLUMN[ShackleSteel(steel)]
    checked.at_least(_DEE_MM[0][column] / _WIDER_MM, body_m=body_m)
    checked.at_least(_DEE_MM[0][column + 1] / _WIDER_MM, pin_m=pin_m)
    body_mm, pin_mm = body_m * _WIDER_MM, pin_m * _WIDER_MM
    return [row[0] for row in _DEE_MM if body_mm >= row[column] and pin_mm >= row[column + 1]][-1] * _TONNE_N


def bow_load_n(bow_m: float, sizes: SizeList = SizeList.AUSTRALIAN) -> float:
    """Working load that goes with the bow of a grade 6 (S) bow shackle: to see whether a mark is likely.

    Formula: table, the last row whose bow is reached
    Valid: bow >= 6 mm; grade 6 or S only: mild steel of this size carries half or less, alloy (grade 8) more
    Source: shackle_size_lists – the lists differ: 4.7 t against 4.75 t at 19 mm, the lower stands

    >>> round(bow_load_n(0.019) / 9806.65, 2), round(bow_load_n(0.019, SizeList.US_EN) / 9806.65, 2)
    (4.7, 4.75)
    """
    return _bow_row(bow_m, sizes)[2] * _TONNE_N


def bow_pin_m(bow_m: float, sizes: SizeList = SizeList.AUSTRALIAN) -> float:
    """Thickness of the pin that goes with the bow of a bow shackle: one size thicker.

    Formula: table, the last row whose bow is reached
    Valid: bow >= 6 mm
    Source: shackle_size_lists – the lists differ: 29 mm against 28 mm for a bow of 25 mm

    >>> round(bow_pin_m(0.019), 4)
    0.022
    """
    return _bow_row(bow_m, sizes)[1] / 1000


def _carrying_mm(working_load_n: float) -> tuple[float, float, float, float, float, float]:
    checked.positive(working_load_n=working_load_n)
    checked.between(0, _DEE_MM[-1][0] * _TONNE_N * (1 + checked.SAME_RATIO), working_load_n=working_load_n)
    return next(row for row in _DEE_MM if row[0] * _TONNE_N * (1 + checked.SAME_RATIO) >= working_load_n)


def _bow_row(bow_m: float, sizes: SizeList) -> tuple[float, float, float]:
    rows = _BOW_MM[SizeList(sizes)]
    checked.at_least(rows[0][0] / _WIDER_MM, bow_m=bow_m)
    return [row for row in rows if bow_m * _WIDER_MM >= row[0]][-1]

"""Tie-down gear without a mark: what US road law takes it to hold. For chain or webbing found, not for recovery."""

from collections.abc import Sequence
from enum import StrEnum

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2


class TiedownGrade(StrEnum):
    """Grade stamped on a US transport chain."""

    G30 = "30"
    G43 = "43"
    G70 = "70"
    G80 = "80"
    G100 = "100"


# least size (the smaller of the mm and the inch figure), then kg by grade; the law prints kilograms of force
_CHAIN: tuple[tuple[float, dict[TiedownGrade, float]], ...] = tuple(
    (size_m, dict(zip(TiedownGrade, loads_kg, strict=False)))
    for size_m, loads_kg in (
        (6.35e-3, (580.0, 1180.0, 1430.0, 1570.0, 1950.0)),
        (7.9375e-3, (860.0, 1770.0, 2130.0, 2000.0, 2600.0)),
        (9.525e-3, (1200.0, 2450.0, 2990.0, 3200.0, 4000.0)),
        (11.0e-3, (1680.0, 3270.0, 3970.0)),
        (12.7e-3, (2030.0, 4170.0, 5130.0, 5400.0, 6800.0)),
        (15.875e-3, (3130.0, 5910.0, 7170.0, 8200.0, 10300.0)),
    )
)
_WEBBING = ((44.45e-3, 790.0), (50e-3, 910.0), (75e-3, 1360.0), (100e-3, 1810.0))
_WIRE_ROPE = (
    *((6.35e-3, 640.0), (7.9375e-3, 950.0), (9.525e-3, 1360.0), (11.0e-3, 1860.0)),
    *((12.7e-3, 2400.0), (15.875e-3, 3770.0), (19.05e-3, 4940.0)),
)


def unmarked_chain_n(size_m: float, grade: TiedownGrade = TiedownGrade.G30) -> float:
    """Working load that US road law gives a tie-down chain without a marked load, by size and grade.

    Formula: table; sizes between the rows take the row below; an unknown grade counts as 30
    Valid: size >= 1/4 in (6.35 mm)
    Source: cfr_393_108 – a higher grade is not always more: at 8 mm grade 70 prints 2,130 kg and grade 80 2,000 kg

    >>> round(unmarked_chain_n(0.008) / 9.80665), round(unmarked_chain_n(0.008, TiedownGrade.G70) / 9.80665)
    (860, 2130)
    """
    grade = TiedownGrade(grade)
    return _row_n([(least_m, loads_kg[grade]) for least_m, loads_kg in _CHAIN if grade in loads_kg], size_m)


def unmarked_webbing_n(width_m: float) -> float:
    """Working load that US road law gives tie-down webbing without a marked load, by its width.

    Formula: table: 45 mm 790 kg, 50 mm 910 kg, 75 mm 1,360 kg, 100 mm 1,810 kg; widths between take the row below
    Valid: width >= 1-3/4 in (44.45 mm)
    Source: cfr_393_108

    >>> round(unmarked_webbing_n(0.050) / 9.80665)
    910
    """
    return _row_n(_WEBBING, width_m)


def unmarked_wire_rope_n(size_m: float) -> float:
    """Working load that US road law gives a tie-down wire rope of unknown make (6 x 37, fibre core), by its diameter.

    Formula: table; sizes between the rows take the row below
    Valid: diameter >= 1/4 in (6.35 mm); rows read up to 3/4 in
    Source: cfr_393_108

    >>> round(unmarked_wire_rope_n(0.010) / 9.80665)
    1360
    """
    return _row_n(_WIRE_ROPE, size_m)


def quarter_strength_n(nominal_strength_n: float) -> float:
    """Working load that US road law gives a wire rope of known make and nominal strength, but without a marked load.

    Formula: WLL = nominal strength / 4
    Valid: strength >= 0
    Source: cfr_393_108

    >>> quarter_strength_n(100e3)
    25000.0
    """
    checked.at_least(0, nominal_strength_n=nominal_strength_n)
    return nominal_strength_n / 4


def weakest_part_n(parts_n: Sequence[float]) -> float:
    """Working load of a tie-down or a line: that of its weakest part, anchor points included.

    Formula: min(WLL of the parts)
    Valid: at least one part, each load >= 0
    Source: cfr_393_108

    >>> weakest_part_n([20e3, 8.9e3, 13e3])
    8900.0
    """
    if not parts_n:
        raise ValueError("parts_n must hold at least one part")
    for part_n in parts_n:
        checked.at_least(0, part_n=part_n)
    return min(parts_n)


def _row_n(rows: Sequence[tuple[float, float]], size_m: float) -> float:
    checked.at_least(rows[0][0] * (1 - checked.SAME_RATIO), size_m=size_m)
    load_kg = [kg for least_m, kg in rows if size_m >= least_m * (1 - checked.SAME_RATIO)][-1]
    return load_kg * STANDARD_GRAVITY_M_PER_S2

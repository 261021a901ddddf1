"""Bolts: stress area, proof and tensile load, and shear on a plane through the thread."""

import math
from enum import StrEnum

from inspector.mechanics import checked


class BoltClass(StrEnum):
    """Property classes of ISO 898-1."""

    C4_6 = "4.6"
    C8_8 = "8.8"
    C10_9 = "10.9"


class BoltGrade(StrEnum):
    """Grades of SAE J429."""

    G2 = "2"
    G5 = "5"
    G8 = "8"


_OVER_M16_M = 0.016
_PROOF_PA = {BoltClass.C4_6: (225e6, 225e6), BoltClass.C8_8: (580e6, 600e6), BoltClass.C10_9: (830e6, 830e6)}
_TENSILE_PA = {BoltClass.C4_6: (400e6, 400e6), BoltClass.C8_8: (800e6, 830e6), BoltClass.C10_9: (1040e6, 1040e6)}
_OVER_THREE_QUARTERS_M = 0.01905
_GRADE_PROOF_PA = {  # 55 and over 3/4 in 33, 85, 120 ksi
    BoltGrade.G2: (379.21e6, 227.53e6),
    BoltGrade.G5: (586.05e6, 586.05e6),
    BoltGrade.G8: (827.37e6, 827.37e6),
}
_GRADE_TENSILE_PA = {  # 74 and over 3/4 in 60, 120, 150 ksi
    BoltGrade.G2: (510.21e6, 413.69e6),
    BoltGrade.G5: (827.37e6, 827.37e6),
    BoltGrade.G8: (1034.21e6, 1034.21e6),
}
_SHEAR_FACTOR = {BoltClass.C4_6: 0.6, BoltClass.C8_8: 0.6, BoltClass.C10_9: 0.5}


def bolt_stress_area_m2(diameter_m: float, pitch_m: float) -> float:
    """Area of a metric bolt's thread in tension.

    Formula: As = pi / 4 (d - 0.9382 P)^2
    Valid: d > 0, 0 < P < d
    Source: iso_898_1_loads

    >>> round(bolt_stress_area_m2(0.012, 0.00175) * 1e6, 1)
    84.3
    """
    checked.positive(diameter_m=diameter_m, pitch_m=pitch_m)
    checked.between(0, diameter_m, pitch_m=pitch_m)
    return math.pi / 4 * (diameter_m - 0.9382 * pitch_m) ** 2


def inch_stress_area_m2(diameter_m: float, pitch_m: float) -> float:
    """Area of an inch bolt's thread in tension; the pitch is an inch over the threads of an inch.

    Formula: At = 0.7854 (d - 0.9743 / n)^2
    Valid: d > 0, 0 < 1/n < d
    Source: sae_j429

    >>> round(inch_stress_area_m2(0.0127, 0.0254 / 13) * 1e6, 1)
    91.5
    """
    checked.positive(diameter_m=diameter_m, pitch_m=pitch_m)
    checked.between(0, diameter_m, pitch_m=pitch_m)
    return 0.7854 * (diameter_m - 0.9743 * pitch_m) ** 2


def bolt_proof_n(diameter_m: float, pitch_m: float, grade: BoltClass) -> float:
    """Proof load of a metric bolt: it stands that without any lasting stretch.

    Formula: Fp = As Sp, Sp by class and size
    Valid: d > 0, 0 < P < d
    Source: iso_898_1_loads

    >>> round(bolt_proof_n(0.012, 0.00175, BoltClass.C8_8) / 1e3, 1)
    48.9
    """
    return bolt_stress_area_m2(diameter_m, pitch_m) * _PROOF_PA[BoltClass(grade)][_is_over_m16(diameter_m)]


def bolt_tensile_n(diameter_m: float, pitch_m: float, grade: BoltClass) -> float:
    """Least load at which a metric bolt breaks in tension.

    Formula: Fm = As Rm, Rm by class and size
    Valid: d > 0, 0 < P < d
    Source: iso_898_1_loads

    >>> round(bolt_tensile_n(0.012, 0.00175, BoltClass.C8_8) / 1e3, 1)
    67.4
    """
    return bolt_stress_area_m2(diameter_m, pitch_m) * _TENSILE_PA[BoltClass(grade)][_is_over_m16(diameter_m)]


def inch_bolt_proof_n(diameter_m: float, pitch_m: float, grade: BoltGrade) -> float:
    """Proof load of an inch bolt.

    Formula: At Sp, Sp by grade; grade 2 is weaker over 3/4 in
    Valid: 1/4 to 1 in, grade 2 to 6 in long; 0 < 1/n < d
    Source: sae_j429

    >>> round(inch_bolt_proof_n(0.0127, 0.0254 / 13, BoltGrade.G5) / 1e3, 1)
    53.7
    """
    checked.between(0.00635, 0.0254, diameter_m=diameter_m)
    over = diameter_m > _OVER_THREE_QUARTERS_M * (1 + checked.SAME_RATIO)
    return inch_stress_area_m2(diameter_m, pitch_m) * _GRADE_PROOF_PA[BoltGrade(grade)][over]


def inch_bolt_tensile_n(diameter_m: float, pitch_m: float, grade: BoltGrade) -> float:
    """Least load at which an inch bolt breaks in tension.

    Formula: At Rm, Rm by grade; grade 2 is weaker over 3/4 in
    Valid: 1/4 to 1 in, grade 2 to 6 in long; 0 < 1/n < d
    Source: sae_j429

    >>> round(inch_bolt_tensile_n(0.0127, 0.0254 / 13, BoltGrade.G8) / 1e3, 1)
    94.7
    """
    checked.between(0.00635, 0.0254, diameter_m=diameter_m)
    over = diameter_m > _OVER_THREE_QUARTERS_M * (1 + checked.SAME_RATIO)
    return inch_stress_area_m2(diameter_m, pitch_m) * _GRADE_TENSILE_PA[BoltGrade(grade)][over]


def bolt_shear_n(stress_area_m2: float, ultimate_pa: float, grade: BoltClass, gamma_m2_factor: float = 1.25) -> float:
    """Shear resistance of a bolt on one plane through its thread.

    Formula: Fv,Rd = av As fub / gM2, av 0.6, for class 10.9 0.5
    Valid: As > 0, fub > 0, gM2 >= 1
    Source: en_1993_1_8_bolts

    >>> round(bolt_shear_n(245e-6, 800e6, BoltClass.C8_8) / 1e3)
    94
    """
    checked.positive(stress_area_m2=stress_area_m2, ultimate_pa=ultimate_pa)
    checked.at_least(1, gamma_m2_factor=gamma_m2_factor)
    return _SHEAR_FACTOR[BoltClass(grade)] * stress_area_m2 * ultimate_pa / gamma_m2_factor


def _is_over_m16(diameter_m: float) -> bool:
    return diameter_m > _OVER_M16_M * (1 + checked.SAME_RATIO)

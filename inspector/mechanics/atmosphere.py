"""Open air: the classes of ISO 9223, what they cost in the first year and in later ones, one face, even attack.

The inside of a tube packed with salt and mud is a climate of its own, outside these standards: see sea_zones.
"""

import math
from enum import StrEnum

from inspector.mechanics import checked
from inspector.mechanics.corrosion import atmospheric_loss_m


class Corrosivity(StrEnum):
    """Corrosivity of an atmosphere by ISO 9223."""

    C1 = "c1"
    C2 = "c2"
    C3 = "c3"
    C4 = "c4"
    C5 = "c5"
    CX = "cx"


class Metal(StrEnum):
    """What the air works on."""

    STEEL = "steel"
    ZINC = "zinc"


class Growth(StrEnum):
    """Which exponent of ISO 9224: the mean one, or the upper one that the standard names for caution."""

    AVERAGE = "average"
    CONSERVATIVE = "conservative"


_BOUNDS_M: dict[Metal, dict[Corrosivity, tuple[float, float]]] = {
    Metal.STEEL: {
        Corrosivity.C1: (0.0, 1.3e-6),
        Corrosivity.C2: (1.3e-6, 25e-6),
        Corrosivity.C3: (25e-6, 50e-6),
        Corrosivity.C4: (50e-6, 80e-6),
        Corrosivity.C5: (80e-6, 200e-6),
        Corrosivity.CX: (200e-6, 700e-6),
    },
    Metal.ZINC: {
        Corrosivity.C1: (0.0, 0.1e-6),
        Corrosivity.C2: (0.1e-6, 0.7e-6),
        Corrosivity.C3: (0.7e-6, 2.1e-6),
        Corrosivity.C4: (2.1e-6, 4.2e-6),
        Corrosivity.C5: (4.2e-6, 8.4e-6),
        Corrosivity.CX: (8.4e-6, 25e-6),
    },
}
_EXPONENTS: dict[Metal, dict[Growth, float]] = {
    Metal.STEEL: {Growth.AVERAGE: 0.523, Growth.CONSERVATIVE: 0.575},
    Metal.ZINC: {Growth.AVERAGE: 0.813, Growth.CONSERVATIVE: 0.873},
}


def first_year_least_m(category: Corrosivity, metal: Metal = Metal.STEEL) -> float:
    """The least loss of the first year in a class of air: its lower bound, one face.

    Formula: lower bound of r_corr by class, tabulated
    Valid: C1 to CX, carbon steel or zinc
    Source: iso_9223

    >>> first_year_least_m(Corrosivity.C4) * 1e6
    50.0
    """
    return _BOUNDS_M[Metal(metal)][Corrosivity(category)][0]


def first_year_most_m(category: Corrosivity, metal: Metal = Metal.STEEL) -> float:
    """The greatest loss of the first year in a class of air: its upper bound, one face.

    Formula: upper bound of r_corr by class, tabulated
    Valid: C1 to CX, carbon steel or zinc
    Source: iso_9223

    >>> round(first_year_most_m(Corrosivity.C4, Metal.ZINC) * 1e6, 1)
    4.2
    """
    return _BOUNDS_M[Metal(metal)][Corrosivity(category)][1]


def in_corrosivity(first_year_m: float, category: Corrosivity, metal: Metal = Metal.STEEL) -> bool:
    """Whether a loss measured over the first year belongs to this class of air.

    Formula: lower bound < r_corr <= upper bound; C1 from 0
    Valid: r_corr >= 0
    Source: iso_9223

    >>> in_corrosivity(80e-6, Corrosivity.C4), in_corrosivity(80e-6, Corrosivity.C5)
    (True, False)
    """
    checked.at_least(0, first_year_m=first_year_m)
    least_m, most_m = (bound_m * (1 + checked.SAME_RATIO) for bound_m in _BOUNDS_M[Metal(metal)][Corrosivity(category)])
    return first_year_m <= most_m and (first_year_m > least_m or category == Corrosivity.C1)


def growth_exponent_ratio(metal: Metal = Metal.STEEL, growth: Growth = Growth.CONSERVATIVE) -> float:
    """The exponent b of the open-air law; the conservative one unless the average is asked for by name.

    Formula: b, tabulated: steel 0.523 and 0.575, zinc 0.813 and 0.873
    Valid: carbon steel or zinc
    Source: iso_9224

    >>> growth_exponent_ratio(Metal.STEEL, Growth.AVERAGE)
    0.523
    """
    return _EXPONENTS[Metal(metal)][Growth(growth)]


def category_loss_m(
    category: Corrosivity, years: float, metal: Metal = Metal.STEEL, growth: Growth = Growth.CONSERVATIVE
) -> float:
    """The most that a class of air takes from one face over the years: its upper bound in the open-air law.

    Formula: D = r_most t^b to 20 years, then along the tangent
    Valid: t >= 0; even attack in open air, no coating
    Source: iso_9224, iso_9223

    >>> round(category_loss_m(Corrosivity.C5, 15, Metal.STEEL, Growth.AVERAGE) * 1e6)
    824
    """
    return atmospheric_loss_m(first_year_most_m(category, metal), years, growth_exponent_ratio(metal, growth))


def first_year_steel_m(
    temperature_c: float, humidity_ratio: float, sulphur_ratio: float, chloride_ratio: float
) -> float:
    """Loss of carbon steel in its first year from climate, sulphur dioxide and salt in the air: dose and response.

    Formula: r = 1.77 Pd^0.52 exp(0.020 RH + f) + 0.102 Sd^0.62 exp(0.033 RH + 0.040 T) in um;
        f = 0.150 (T - 10) up to 10 C, else -0.054 (T - 10); RH in percent; Pd, Sd deposition of SO2 and chloride
        as multiples of 1 mg/m2 a day
    Valid: T -17.1 to 28.7 C, RH 0.34 to 0.93, Pd to 150.4, Sd to 760.5, the data behind the formula
    Source: iso_9223 – the ranges from memory; the standard gives an uncertainty of -33 to +50 %, from memory

    >>> round(first_year_steel_m(12, 0.78, 5, 60) * 1e6, 1)
    44.8
    """
    checked.between(-17.1, 28.7, temperature_c=temperature_c)
    checked.between(0.34, 0.93, humidity_ratio=humidity_ratio)
    checked.between(0, 150.4, sulphur_ratio=sulphur_ratio)
    checked.between(0, 760.5, chloride_ratio=chloride_ratio)
    percent, above_10 = 100 * humidity_ratio, temperature_c - 10
    warmth = 0.150 * above_10 if above_10 <= 0 else -0.054 * above_10
    sulphur = 1.77 * math.pow(sulphur_ratio, 0.52) * math.exp(0.020 * percent + warmth)
    salt = 0.102 * math.pow(chloride_ratio, 0.62) * math.exp(0.033 * percent + 0.040 * temperature_c)
    return (sulphur + salt) * 1e-6

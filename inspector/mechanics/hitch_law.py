"""Bench loads of SAE J684 for light couplers, balls and hitches, as two US states copied them into law.

The states differ on vertical tension, most likely because they copied different editions. Pounds are turned into
newtons beforehand, exactly.
"""

from enum import StrEnum

from inspector.mechanics import checked
from inspector.units import STANDARD_GRAVITY_M_PER_S2


class LawCopy(StrEnum):
    """Whose copy of SAE J684: Maryland asks the more, so it stands unless New York is named."""

    MARYLAND = "maryland"
    NEW_YORK = "new york"


class BenchPull(StrEnum):
    """Direction of the bench load on coupler and ball."""

    TENSION = "tension"
    COMPRESSION = "compression"
    TRANSVERSE = "transverse"
    VERTICAL_TENSION = "vertical tension"
    VERTICAL_COMPRESSION = "vertical compression"


class ProofStep(StrEnum):
    """A step of the proof of a weight-carrying hitch."""

    DOWN_AND_BACK = "down and back"
    ALONG = "along"
    DOWN_WITH_ALONG = "down with along"
    SIDEWAYS = "sideways"


_CLASS_MOST_KG = (907.18474, 1587.573295, 2267.96185)  # 2000, 3500, 5000 lb
_MOST_KG = 4535.9237  # 10000 lb
_CLASS_N: dict[BenchPull, tuple[float, float, float]] = {
    BenchPull.TENSION: (26689.329691563, 46706.326960235, 66723.324228908),  # 6000, 10500, 15000 lbf
    BenchPull.COMPRESSION: (26689.329691563, 46706.326960235, 66723.324228908),
    BenchPull.TRANSVERSE: (8896.443230521, 13344.664845782, 17792.886461042),  # 2000, 3000, 4000 lbf
    BenchPull.VERTICAL_TENSION: (11120.554038151, 20016.997268672, 31137.551306824),  # 2500, 4500, 7000 lbf
    BenchPull.VERTICAL_COMPRESSION: (11120.554038151, 20016.997268672, 31137.551306824),
}
_NEW_YORK_VERTICAL_N = (11120.554038151, 17348.064299516, 17348.064299516)  # 2500, 3900, 3900 lbf
_NEW_YORK_BASE_N = 16903.242137990  # 3800 lbf
_CLASS_4_SHARES = {
    BenchPull.TENSION: 3.0,
    BenchPull.COMPRESSION: 3.0,
    BenchPull.TRANSVERSE: 1.0,
    BenchPull.VERTICAL_TENSION: 1.3,
    BenchPull.VERTICAL_COMPRESSION: 1.4,
}
_PROOF: dict[ProofStep, tuple[float, float]] = {
    ProofStep.DOWN_AND_BACK: (0.47, 2135.146375325),  # 0.47 R + 480 lbf
    ProofStep.ALONG: (0.23, 6805.779071349),  # 0.23 R + 1530 lbf
    ProofStep.DOWN_WITH_ALONG: (0.15, 0.0),
    ProofStep.SIDEWAYS: (0.20, 2224.110807630),  # 0.20 R + 500 lbf
}


def coupler_class_count(trailer_kg: float) -> int:
    """The class of coupler, 1 to 4, that a trailer asks for.

    Formula: class 1 to 2000 lb, 2 to 3500 lb, 3 to 5000 lb, 4 to 10000 lb of greatest gross trailer weight
    Valid: mass above 0, to 4536 kg (10000 lb)
    Source: maryland_11_13_08, new_york_57_5

    >>> coupler_class_count(907), coupler_class_count(1500), coupler_class_count(3500)
    (1, 2, 4)
    """
    _check_trailer(trailer_kg)
    return 1 + sum(trailer_kg > most_kg * (1 + checked.SAME_RATIO) for most_kg in _CLASS_MOST_KG)


def coupler_breaking_n(trailer_kg: float, pull: BenchPull, law: LawCopy = LawCopy.MARYLAND) -> float:
    """The bench load that coupler and ball must stand without failing.

    Formula: by class: along 6000, 10500, 15000 lbf, 3 W; across 2000, 3000, 4000 lbf, W; up 2500, 4500, 7000 lbf,
        1.3 W (New York 2500, 3900, 3900 lbf, 3800 lbf + W / 50); down 2500, 4500, 7000 lbf, 1.4 W
    Valid: mass above 0, to 4536 kg (10000 lb)
    Source: maryland_11_13_08, new_york_57_5 – the states differ on vertical tension from class 2 up

    >>> round(coupler_breaking_n(1500, BenchPull.VERTICAL_TENSION) / 1e3, 2)
    20.02
    """
    index = coupler_class_count(trailer_kg) - 1
    if LawCopy(law) == LawCopy.NEW_YORK and pull == BenchPull.VERTICAL_TENSION:
        by_weight_n = _NEW_YORK_BASE_N + trailer_kg * STANDARD_GRAVITY_M_PER_S2 / 50
        return (*_NEW_YORK_VERTICAL_N, by_weight_n)[index]
    by_weight_n = _CLASS_4_SHARES[BenchPull(pull)] * trailer_kg * STANDARD_GRAVITY_M_PER_S2
    return (*_CLASS_N[BenchPull(pull)], by_weight_n)[index]


def hitch_proof_n(trailer_kg: float, step: ProofStep) -> float:
    """The force of one step of the proof of a weight-carrying hitch; both states print the same.

    Formula: down and back V = L = 0.47 R + 480; along L = 0.23 R + 1530, with V = 0.15 R down;
        sideways T = 0.20 R + 500; R and forces in pounds
    Valid: mass above 0, to 4536 kg (10000 lb)
    Source: maryland_11_13_08, new_york_57_5

    >>> round(hitch_proof_n(1500, ProofStep.DOWN_AND_BACK) / 1e3, 3)
    9.049
    """
    _check_trailer(trailer_kg)
    share, base_n = _PROOF[ProofStep(step)]
    return share * trailer_kg * STANDARD_GRAVITY_M_PER_S2 + base_n


def _check_trailer(trailer_kg: float) -> None:
    checked.positive(trailer_kg=trailer_kg)
    checked.between(0, _MOST_KG * (1 + checked.SAME_RATIO), trailer_kg=trailer_kg)

"""How many pulls a fillet stands that fails from its root. Recoveries are few, road miles behind a trailer many."""

from inspector.mechanics import checked

ROOT_CATEGORY_PA = 36e6
CATEGORY_CYCLES = 2e6
KNEE_CYCLES = 5e6
CUT_OFF_CYCLES = 1e8


def constant_limit_ratio() -> float:
    """Stress range of the knee over the category, below which the curve bends.

    Formula: (2e6 / 5e6)^(1/3)
    Valid: the curve of EN 1993-1-9
    Source: en_1993_1_9_root

    >>> round(constant_limit_ratio(), 3)
    0.737
    """
    return float((CATEGORY_CYCLES / KNEE_CYCLES) ** (1 / 3))


def cut_off_ratio() -> float:
    """Stress range of the cut-off over that of the knee, below which nothing counts.

    Formula: (5e6 / 1e8)^(1/5)
    Valid: the curve of EN 1993-1-9
    Source: en_1993_1_9_root

    >>> round(cut_off_ratio(), 3)
    0.549
    """
    return float((KNEE_CYCLES / CUT_OFF_CYCLES) ** (1 / 5))


def root_cycles_count(throat_range_pa: float, gamma_mf_factor: float = 1.35) -> float:
    """How often a stress range on the throat may come back before the root fails; the severe factor stands.

    Formula: N = 2e6 (36 / (gMf ds))^3; below the knee N = 5e6 (knee / (gMf ds))^5
    Valid: ds > the cut-off, 1 <= gMf; ds in MPa on the throat
    Source: en_1993_1_9_root

    >>> round(root_cycles_count(100e6, 1.0), -3)
    93000.0
    """
    checked.positive(throat_range_pa=throat_range_pa)
    checked.at_least(1, gamma_mf_factor=gamma_mf_factor)
    knee_pa = ROOT_CATEGORY_PA * constant_limit_ratio()
    range_pa = throat_range_pa * gamma_mf_factor
    checked.between(cut_off_ratio(), float("inf"), range_over_knee_ratio=range_pa / knee_pa)
    if range_pa >= knee_pa:
        return float(CATEGORY_CYCLES * (ROOT_CATEGORY_PA / range_pa) ** 3)
    return float(KNEE_CYCLES * (knee_pa / range_pa) ** 5)

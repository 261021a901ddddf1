"""How hot and how cold textile gear may get, and which chemicals its fibre does not bear."""

from enum import StrEnum

from inspector.mechanics import checked
from inspector.mechanics.fibre import Fibre

_ABSOLUTE_ZERO_C = -273.15


class HeatRule(StrEnum):
    """Whose limit: the strictest of all, or one by name."""

    STRICTEST = "strictest"
    OSHA = "osha"
    EM_385 = "em 385"
    EN_1492 = "en 1492"


class ColdRule(StrEnum):
    """Whose limit in the cold: the strictest of all, or one by name."""

    STRICTEST = "strictest"
    ROPE_SLINGS = "rope slings"
    EM_385 = "em 385"
    EN_1492 = "en 1492"


class Chemical(StrEnum):
    """What gear may come to touch."""

    ACID = "acid"
    PHENOLIC = "phenolic"
    CAUSTIC = "caustic"


_MOST_C: dict[HeatRule, dict[Fibre, float]] = {
    HeatRule.OSHA: {Fibre.NYLON: 82.2, Fibre.POLYESTER: 82.2, Fibre.POLYPROPYLENE: 93.3},
    # some yarns weaken above 60 on long exposure; hmpe stands in no list and is taken for one of them
    HeatRule.EM_385: {Fibre.NYLON: 90.0, Fibre.POLYESTER: 90.0, Fibre.HMPE: 60.0},
    HeatRule.EN_1492: {Fibre.NYLON: 100.0, Fibre.POLYESTER: 100.0, Fibre.POLYPROPYLENE: 80.0},
}
_LEAST_C: dict[ColdRule, float] = {
    ColdRule.STRICTEST: -29.0,
    ColdRule.ROPE_SLINGS: -29.0,
    ColdRule.EM_385: -40.0,
    ColdRule.EN_1492: -40.0,
}
_BARRED: dict[Fibre, frozenset[Chemical]] = {
    Fibre.NYLON: frozenset({Chemical.ACID, Chemical.PHENOLIC}),
    Fibre.POLYESTER: frozenset({Chemical.CAUSTIC}),
    Fibre.POLYPROPYLENE: frozenset({Chemical.CAUSTIC}),
    Fibre.HMPE: frozenset(Chemical),  # in no list, so barred from all
}


def fibre_most_c(fibre: Fibre, rule: HeatRule = HeatRule.STRICTEST) -> float:
    """The hottest a strap or rope may get; the strictest published limit unless one is named.

    Formula: nylon, polyester 82.2 (OSHA), 90 (EM 385), 100 (EN 1492); polypropylene 93.3 (OSHA), 80 (EN 1492); hmpe 60
    Valid: the fibres listed; a rule that is named must have a limit for the fibre
    Source: osha_1926_251_heat, em_385_heat, en_1492_1_heat – OSHA puts polypropylene above nylon, EN below it; hmpe
        stands in no list: 60 is where EM 385 says that some yarns weaken on long exposure

    >>> fibre_most_c(Fibre.NYLON), fibre_most_c(Fibre.POLYPROPYLENE)
    (82.2, 80.0)
    """
    fibre, rule = Fibre(fibre), HeatRule(rule)
    rules = _MOST_C.values() if rule is HeatRule.STRICTEST else [_MOST_C[rule]]
    found = [listed[fibre] for listed in rules if fibre in listed]
    if not found:
        raise ValueError(f"fibre must be one that the rule “{rule}” limits, not {fibre.value!r}")
    return min(found)


def fibre_least_c(rule: ColdRule = ColdRule.STRICTEST) -> float:
    """The coldest a dry strap or rope may get; wet and frozen it is not to be used at any temperature.

    Formula: -29 (US rope slings), -40 (EM 385, EN 1492-1)
    Valid: the rules listed
    Source: wac_29429_cold, em_385_heat, en_1492_1_heat

    >>> fibre_least_c()
    -29.0
    """
    return _LEAST_C[ColdRule(rule)]


def in_fibre_temperature(
    temperature_c: float,
    fibre: Fibre,
    heat_rule: HeatRule = HeatRule.STRICTEST,
    cold_rule: ColdRule = ColdRule.STRICTEST,
) -> bool:
    """Whether a dry strap or rope is neither too cold nor too hot, both limits included.

    Formula: T_least <= T <= T_most
    Valid: T above absolute zero
    Source: osha_1926_251_heat, em_385_heat, en_1492_1_heat, wac_29429_cold

    >>> in_fibre_temperature(85, Fibre.NYLON), in_fibre_temperature(85, Fibre.NYLON, HeatRule.EN_1492)
    (False, True)
    """
    checked.at_least(_ABSOLUTE_ZERO_C, temperature_c=temperature_c)
    return fibre_least_c(cold_rule) <= temperature_c <= fibre_most_c(fibre, heat_rule)


def is_barred_chemical(fibre: Fibre, chemical: Chemical) -> bool:
    """Whether a fibre must not meet a chemical; “no” only means that no bar is published.

    Formula: nylon: acid, phenolic; polyester and polypropylene: caustic; hmpe: all, since no list names it
    Valid: the names listed
    Source: osha_1926_251_bars, common_practice – common practice for hmpe

    >>> is_barred_chemical(Fibre.NYLON, Chemical.ACID), is_barred_chemical(Fibre.POLYESTER, Chemical.ACID)
    (True, False)
    """
    return Chemical(chemical) in _BARRED[Fibre(fibre)]


def is_barred_for_aluminium(chemical: Chemical) -> bool:
    """Whether aluminium fittings of a strap must not meet a chemical.

    Formula: caustic
    Valid: the names listed
    Source: osha_1926_251_bars

    >>> is_barred_for_aluminium(Chemical.CAUSTIC), is_barred_for_aluminium(Chemical.ACID)
    (True, False)
    """
    return Chemical(chemical) is Chemical.CAUSTIC

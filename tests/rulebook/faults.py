"""For each rule a sound piece with one thing changed, so that this rule answers with its `else`."""

from collections.abc import Callable
from datetime import timedelta

from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Surface
from inspector.gear.item import Provenance
from inspector.gear.kind import Basis, Kind
from inspector.gear.recall_notice import Step
from inspector.gear.use import Event, Weather
from inspector.rulebook.case import Case
from inspector.rulebook.catalogue import quantity
from inspector.rulebook.judge import limit_value
from inspector.rulebook.texts import Rule
from inspector.units import Dimension
from tests.rulebook import sound as make
from tests.rulebook.dossiers import BOOK, TODAY

Change = Callable[[Dossier, Rule], Dossier]


def faulty(kind: Kind, rule: Rule) -> Dossier:
    """The dossier for the rule. Raises KeyError where a named quantity has no change yet: add it to CHANGES below."""
    dossier = make.sound(kind)
    if rule.id in BY_RULE:
        return BY_RULE[rule.id](dossier, rule)
    prefix, _, key = rule.quantity.partition(".")
    if prefix in BY_PREFIX:
        return BY_PREFIX[prefix](dossier, rule, key)
    return CHANGES[rule.quantity](dossier, rule)


def past_limit(dossier: Dossier, rule: Rule, dimension: Dimension) -> float:
    """A value that just does not meet the rule."""
    limit = limit_number(dossier, rule, dimension)
    step = 1.0 if dimension is Dimension.COUNT else max(abs(limit) * 1e-3, 1e-4)
    return {"at_most": limit + step, "at_least": limit - step}.get(rule.must, limit)


def limit_number(dossier: Dossier, rule: Rule, dimension: Dimension) -> float:
    """The rule's limit in SI."""
    named = quantity(Case(dossier, BOOK), rule.limit_is).value if rule.limit_is else limit_value(rule, dimension)
    assert named is not None and named.number is not None
    return named.number


def _graded(dossier: Dossier, rule: Rule, key: str) -> Dossier:
    return make.with_grade(dossier, key, rule.words[0])


def _measured(dossier: Dossier, rule: Rule, key: str) -> Dossier:
    measure = dossier.kind.measure(key)
    assert measure is not None
    return make.with_reading(dossier, key, past_limit(dossier, rule, measure.dimension))


def _lost(dossier: Dossier, rule: Rule, key: str) -> Dossier:
    new = _new_size(dossier, key)
    measure = dossier.kind.measure(key)
    if measure is not None and measure.dimension is Dimension.COUNT:
        return make.with_reading(dossier, key, new - 1)
    return make.with_reading(dossier, key, new * (1 - past_limit(dossier, rule, Dimension.RATIO)))


def _grown(dossier: Dossier, rule: Rule, key: str) -> Dossier:
    return make.with_reading(dossier, key, _new_size(dossier, key) * (1 + past_limit(dossier, rule, Dimension.RATIO)))


def _booked(dossier: Dossier, rule: Rule, key: str) -> Dossier:
    """Another size as new, and measured as new."""
    si = past_limit(dossier, rule, Dimension.LENGTH)
    return make.with_reading(make.with_size(dossier, key, si), key, si)


def _thin_weld(dossier: Dossier, rule: Rule) -> Dossier:
    return make.with_size(dossier, "weld_throat", past_limit(dossier, rule, Dimension.LENGTH))


def _new_size(dossier: Dossier, measure_key: str) -> float:
    measure = dossier.kind.measure(measure_key)
    size = dossier.item.size(measure.compare_with) if measure else None
    assert size is not None
    return size.si


BY_PREFIX: dict[str, Callable[[Dossier, Rule, str], Dossier]] = {
    "check": _graded,
    "measured": _measured,
    "loss": _lost,
    "growth": _grown,
    "excess": _grown,
    "shortfall": _lost,
    "new": _booked,
}


def _overdue(dossier: Dossier, _: Rule) -> Dossier:
    return replace(dossier, on=TODAY + timedelta(days=dossier.kind.every_days + 1))


def _unanswered(dossier: Dossier, _: Rule) -> Dossier:
    return replace(make.with_facts(dossier, provenance=Provenance.UNKNOWN), inspections=())


def _home_made(dossier: Dossier, _: Rule) -> Dossier:
    marked = replace(dossier.item.facts.rating, stated_on="piece")
    return make.with_facts(dossier, provenance=Provenance.HOME_MADE, rating=marked)


def _rated(dossier: Dossier, rule: Rule) -> Dossier:
    rating = replace(make.sound_rating(dossier.kind), stated_on=rule.words[0])
    return make.with_facts(dossier, rating=rating)


def _overrated(dossier: Dossier, _: Rule) -> Dossier:
    """Two thousand times what is marked on it, as where a unit was misread."""
    rating = dossier.item.rating
    assert rating.figure is not None
    return make.with_facts(dossier, rating=replace(rating, figure=replace(rating.figure, si=rating.figure.si * 2000)))


def _factored(dossier: Dossier, rule: Rule) -> Dossier:
    factor = None if rule.must == "present" else past_limit(dossier, rule, Dimension.FACTOR)
    return make.with_facts(dossier, rating=make.sound_rating(dossier.kind, Basis.WLL, factor))


def _aged(dossier: Dossier, rule: Rule) -> Dossier:
    return make.older(dossier, past_limit(dossier, rule, Dimension.DAYS) / 365.25)


def _ageing(dossier: Dossier, _: Rule) -> Dossier:
    return make.older(dossier, 3)  # 3 full years at the club's 2 % a year


def _weakened(dossier: Dossier, _: Rule) -> Dossier:
    """Long in the sun before it was inspected, and rubbed: no other rule retires for either."""
    faded = make.with_exposure(dossier, Weather.SUN, on=make.BOOKED, days=900)
    return make.with_grade(faded, "abrasion", "slight")


def _mismatched(dossier: Dossier, _: Rule) -> Dossier:
    return make.with_size(dossier, "coupler", 0.0524)


def _inch_ball(dossier: Dossier, _: Rule) -> Dossier:
    """A ball of 1-7/8 in for a coupling of that size, as good as new."""
    small = make.with_size(make.with_size(dossier, "ball_diameter", 0.0476), "coupler", 0.0476)
    return make.with_reading(small, "ball_diameter", 0.0476)


def _odd_pin(dossier: Dossier, _: Rule) -> Dossier:
    return make.with_reading(make.with_size(dossier, "pin_diameter", 0.019), "pin_diameter", 0.019)


def _heated(material: str, heat: str) -> Change:
    def change(dossier: Dossier, _: Rule) -> Dossier:
        hot = make.with_exposure(dossier, Weather.HEAT, on=make.BOOKED, heat=heat)
        return make.with_facts(hot, material=material) if material else hot

    return change


def _thin(dossier: Dossier, rule: Rule) -> Dossier:
    return make.with_reading(
        dossier, "wall", limit_number(dossier, rule, Dimension.LENGTH)
    )  # less the gauge's accuracy


def _rough(dossier: Dossier, _: Rule) -> Dossier:
    return make.with_reading(dossier, "wall", _new_size(dossier, "wall"), surface=Surface.ROUGH)


def _long_read(dossier: Dossier, _: Rule) -> Dossier:
    """In salt, and its wall read with a good gauge, but two years ago."""
    first = TODAY - timedelta(days=760)
    booked = replace(dossier, item=replace(dossier.item, booked_on=first))
    salted = make.with_exposure(booked, Weather.SALT, on=first)
    return make.with_earlier(make.without_reading(salted, "wall"), make.sound_inspection(dossier.kind, first))


def _thinning(dossier: Dossier, rule: Rule) -> Dossier:
    """Most of what may be lost went within the last 200 days."""
    new = _new_size(dossier, "wall")
    left = make.with_reading(dossier, "wall", new * 0.86)
    return make.with_earlier(left, make.sound_inspection(dossier.kind, make.BOOKED))


def _reckoned(dossier: Dossier, _: Rule) -> Dossier:
    """Ten years in salt and never read."""
    began = TODAY - timedelta(days=3650)
    salted = make.with_exposure(make.with_facts(dossier, made_on=began), Weather.SALT, on=began)
    return make.without_reading(salted, "wall")


def _untried(dossier: Dossier, _: Rule) -> Dossier:
    """In salt, and its wall read today with a gauge that nobody tried."""
    salted = make.with_exposure(dossier, Weather.SALT, on=make.BOOKED)
    return make.with_reading(salted, "wall", _new_size(dossier, "wall"), block_checked=False)


def _never_read(dossier: Dossier, _: Rule) -> Dossier:
    return make.older(make.without_reading(dossier, "wall"), 2)


CHANGES: dict[str, Change] = {
    "inspection_age": _overdue,
    "history": _unanswered,
    "open_events": lambda dossier, _: make.with_use(dossier, event=Event.OVERLOAD),
    "harmful_exposures": lambda dossier, _: make.with_exposure(dossier, Weather.CHEMICAL),
    "frozen_exposures": lambda dossier, _: make.with_exposure(dossier, Weather.FROST),
    "open_doubts": lambda dossier, _: make.with_doubt(dossier),
    "open_fittings": lambda dossier, _: make.with_fitting(dossier),
    "open_finds": lambda dossier, _: make.with_find(dossier),
    "open_repairs": lambda dossier, _: make.with_repair(dossier),
    "open_labels": lambda dossier, _: make.with_new_label(dossier),
    "open_evidence": lambda dossier, _: make.with_quarantine(dossier),
    "open_breaks": lambda dossier, _: make.with_break(dossier),
    "open_releases": lambda dossier, _: make.with_release(dossier),
    "open_recalls": lambda dossier, _: make.with_call(dossier),
    "open_remedies": lambda dossier, _: make.with_call(dossier, Step.REMEDIED),
    "visit_age": lambda dossier, _: make.with_visit(dossier),
    "home_made_paper": _home_made,
    "open_strikes": lambda dossier, _: make.with_strike(dossier),
    "changed_figures": lambda dossier, _: make.with_first_value(dossier),
    "rating_stated": _rated,
    "rating_over_sizes": _overrated,
    "design_factor": _factored,
    "age": _aged,
    "ageing_loss": _ageing,
    "abrasion_loss": lambda dossier, _: make.with_grade(dossier, "abrasion", "slight"),
    "strength_left": _weakened,
    "pull_count": lambda dossier, _: make.with_use(dossier, pulls=10),
    "identity": lambda dossier, _: make.with_facts(dossier, serial=""),
    "weld_throat": _thin_weld,
    "shackle_pin": _odd_pin,
    "ball_in_coupler": _mismatched,
    "hottest": _heated("", "95 °C"),
    "wall_relied": _thin,
    "wall_rough_allowed": _rough,
    "wall_reading_age": _long_read,
    "wall_unread_age": _never_read,
    "wall_gauge": _untried,
    "wall_life": _thinning,
    "wall_estimate": _reckoned,
}
BY_RULE: dict[str, Change] = {
    "ball-too-small": _inch_ball,
    "shackle-too-hot": _heated("", "500 °C"),
    "metal-too-hot": _heated("", "500 °C"),
    "wire-too-hot": _heated("steel wire, steel core", "500 °C"),
    "wire-core-heated": _heated("steel wire, fibre core", "95 °C"),
    "wire-core-perhaps-heated": _heated("steel wire", "95 °C"),
}

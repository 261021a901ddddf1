"""The limit of a measured check on one piece, for a person with a calliper and no tables."""

from inspector.gear.dossier import Dossier
from inspector.gear.kind import Measure
from inspector.gear.rulebooks import Part
from inspector.rulebook.case import Case
from inspector.rulebook.catalogue import quantity
from inspector.rulebook.club_figures import dimension_of, stricter_is_more
from inspector.rulebook.club_marks import loosened_words
from inspector.rulebook.load import Rulebook
from inspector.rulebook.texts import Rule
from inspector.rulebook.words import must_word
from inspector.units import Dimension, System, read, show


def measure_limit(dossier: Dossier, measure: Measure, book: Rulebook, system: System) -> str:
    """E.g. "more than 17.1 mm", with its mark where the club loosened it; empty where no rule or size gives one."""
    size = dossier.item.size(measure.compare_with)
    case = Case(dossier, book)
    rules = [rule for rule in book.rules_for(dossier.kind) if _speaks_of(rule, measure)]
    for rule in _strictest_first(rules):
        named = _named(case, rule, system)
        if words := named or _limit(rule, size.si if size else None, measure.dimension, system):
            return _marked(words, [one for one in rules if one.quantity == rule.quantity], book)
    return ""


def _speaks_of(rule: Rule, measure: Measure) -> bool:
    """Whether the rule says what wear or damage may do to the measure; what cannot be true is no limit to check by."""
    prefix, _, key = rule.quantity.partition(".")
    return key == measure.key and prefix not in {"excess", "shortfall"}


def _named(case: Case, rule: Rule, system: System) -> str:
    """The demand where the limit is a named quantity of this piece."""
    value = quantity(case, rule.limit_is).value if rule.limit_is else None
    if value is None or value.number is None or value.dimension is None:
        return ""
    return must_word(rule.must, show(value.number, value.dimension, system))


def _strictest_first(rules: list[Rule]) -> list[Rule]:
    """A club may set the limit of a later rule below that of the first; the stricter one is what a checker needs."""
    if not rules:
        return []
    more = stricter_is_more(rules[0].must)
    alike = [
        one for one in rules if one.limit and (one.quantity, stricter_is_more(one.must)) == (rules[0].quantity, more)
    ]
    first = sorted(alike, key=lambda one: (_figure(one) * (-1 if more else 1), one.must in {"at_least", "at_most"}))
    return [*first, *(one for one in rules if one not in first)]


def _figure(rule: Rule) -> float:
    return read(rule.limit, dimension_of(rule.limit) or Dimension.FACTOR, field=rule.id).si


def _marked(words: str, rules: list[Rule], book: Rulebook) -> str:
    """With the mark of each of the rules that the club has loosened: any of them may have been the stricter one."""
    loosened, ids = book.club.loosened if book.club else (), {rule.id for rule in rules}
    own = [loosened_words(one) for one in loosened if one.part is Part.LIMIT and one.about in ids]
    return f"{words} ({'; '.join(own)})" if own else words


def _limit(rule: Rule, new: float | None, dimension: Dimension, system: System) -> str:
    prefix = rule.quantity.partition(".")[0]
    if not rule.limit:
        return ""
    if prefix == "measured":
        return must_word(rule.must, rule.limit)
    if new is None or prefix not in {"loss", "growth"}:
        return ""
    ratio = read(rule.limit, Dimension.RATIO, field=rule.id).si
    at = new * (1 - ratio) if prefix == "loss" else new * (1 + ratio)
    turned = {"below": "above", "at_most": "at_least"}.get(rule.must, rule.must) if prefix == "loss" else rule.must
    return must_word(turned, show(at, dimension, system))

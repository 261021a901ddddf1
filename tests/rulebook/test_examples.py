"""Each rule's own examples, run: below, at and above its limit, and with nothing known."""

import pytest

from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Value
from inspector.rulebook.catalogue import is_known
from inspector.rulebook.judge import answer_to
from inspector.rulebook.load import packaged
from inspector.rulebook.quantity import Quantity
from inspector.rulebook.sum_texts import text_of
from inspector.rulebook.sums import functions
from inspector.rulebook.texts import Example, Rule
from inspector.units import Dimension, read
from tests.criteria_table import criteria
from tests.each import each

RULES = packaged().rules
NUMERIC = {"at_least", "at_most", "above", "below"}
READ_AS = (
    Dimension.LENGTH,
    Dimension.DAYS,
    Dimension.FORCE,
    Dimension.TORQUE,
    Dimension.TEMPERATURE,
    Dimension.RATIO,
    Dimension.COUNT,
)


EXAMPLES = [(rule, example) for rule in RULES for example in rule.example]


def figure(rule: Rule, text: str) -> Value:
    """The text in whatever dimension reads it; an example's unit tells which."""
    for dimension in READ_AS:
        try:
            return Value(number=read(text, dimension, field=rule.id).si, dimension=dimension)
        except Exception:
            continue
    raise AssertionError(f"{rule.id}: {text!r} is no figure")


def given(rule: Rule, example: Example) -> tuple[Quantity, Value | None]:
    limit_text = example.limit or rule.limit
    limit = figure(rule, limit_text) if limit_text else None
    if example.given == "unknown":
        return Quantity(None, why_unknown="not known"), limit
    value = figure(rule, example.given) if rule.must in NUMERIC else Value(word=example.given)
    return Quantity(value), limit


@each(("rule", "example"), EXAMPLES, ids=[f"{rule.id}: {one.given} -> {one.expect}" for rule, one in EXAMPLES])
def test_example(rule: Rule, example: Example) -> None:
    quantity, limit = given(rule, example)
    expected = Outcome.FIT if example.expect == "note" else Outcome(example.expect)
    assert answer_to(rule, quantity, limit).outcome is expected


@each("rule", RULES, ids=[rule.id for rule in RULES])
def test_a_rule_shows_both_sides_of_its_limit_and_what_silence_does(rule: Rule) -> None:
    expected = [example.expect for example in rule.example]
    assert any(example.given == "unknown" for example in rule.example)
    assert "fit" in expected
    assert rule.otherwise == "note" or rule.otherwise in expected
    if rule.must in NUMERIC and rule.limit:
        at = {figure(rule, one.given).number for one in rule.example if one.given != "unknown"}
        limit = figure(rule, rule.limit).number
        assert limit is not None
        numbers = sorted(one for one in at if one is not None)
        assert numbers[0] < limit < numbers[-1] or limit == 0
        assert any(one == pytest.approx(limit) for one in numbers)


@each("rule", RULES, ids=[rule.id for rule in RULES])
def test_a_rule_names_only_quantities_that_exist(rule: Rule) -> None:
    names = {rule.quantity, rule.limit_is, rule.derate_by} - {""}
    assert [name for name in names if not is_known(name)] == []
    assert not (rule.otherwise == "retire" and rule.purposes), "retirement always means the whole piece"
    assert rule.says.endswith(".")


def test_every_check_that_a_kind_asks_has_a_rule_for_each_fault_it_can_show() -> None:
    book = packaged()
    silent = []
    for kind in book.kinds.values():
        rules = book.rules_for(kind)
        for check in kind.checks:
            judged = {word for rule in rules if rule.quantity == f"check.{check.key}" for word in rule.words}
            wanted = {"bad", "slight"} if check.slight else {"bad"}
            by_derating = {"slight"} if check.key == "abrasion" else set()
            silent += [f"{kind.key}: {check.key} {word}" for word in sorted(wanted - judged - by_derating)]
    assert silent == []


def test_every_measure_that_must_be_taken_is_judged() -> None:
    book = packaged()
    silent = [
        f"{kind.key}: {measure.key}"
        for kind in book.kinds.values()
        for measure in kind.measures
        if measure.required and not any(rule.quantity.partition(".")[2] == measure.key for rule in book.rules_for(kind))
    ]
    assert silent == []


def test_no_kind_asks_more_than_a_person_answers_with_care() -> None:
    assert {kind.key: len(kind.checks) for kind in packaged().kinds.values() if len(kind.checks) > 12} == {}


def test_every_source_and_setting_is_used() -> None:
    book = packaged()
    named = {rule.source for rule in book.rules} | {kind.source for kind in book.kinds.values()}
    named |= {setting.source for setting in book.setting_texts.values()} | {"house_law"}
    named |= {profile.source for profile, _ in book.profiles.values()}
    named |= {key for function in functions().values() for key in text_of(function).sources}
    named |= {one.source for one in criteria()}
    assert set(book.sources) - named == set()

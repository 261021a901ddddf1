"""The published criteria of removal, each held by a rule or left out for a reason that is written down."""

from inspector.rulebook.load import packaged
from inspector.rulebook.texts import Rule
from tests.criteria_table import Criterion, criteria, table
from tests.each import each
from tests.written_table import written

BOOK = packaged()
CRITERIA = criteria()
RULES = {rule.id: rule for rule in BOOK.rules}
ACTS = {"retire", "hold", "derate"}
OWN = {"common_practice", "club_setting", "house_law"}


@each("one", CRITERIA, ids=[f"{one.of}: {one.says}" for one in CRITERIA])
def test_a_criterion_names_rules_that_exist_or_says_why_not(one: Criterion) -> None:
    assert one.says and one.source in BOOK.sources
    assert bool(one.rules) != bool(one.why_not)
    assert [rule for rule in one.rules if rule not in RULES] == []
    assert not one.why_not or one.why_not.endswith(".")


@each("rule", BOOK.rules, ids=list(RULES))
def test_a_rule_that_acts_holds_a_published_criterion_or_says_that_none_is_published(rule: Rule) -> None:
    if rule.otherwise in ACTS and rule.source not in OWN:
        assert any(rule.id in one.rules for one in CRITERIA)


def test_a_rule_is_mapped_by_its_own_source() -> None:
    """A rule that names a printed source is named by a criterion of that source."""
    by_source = {(rule, one.source) for one in CRITERIA for rule in one.rules}
    unsaid = [
        rule.id
        for rule in BOOK.rules
        if rule.otherwise in ACTS and rule.source not in OWN and (rule.id, rule.source) not in by_source
    ]
    assert unsaid == []


def test_a_criterion_stands_once() -> None:
    said = [(one.of, one.says, one.source) for one in CRITERIA]
    assert len(said) == len(set(said))


def test_the_table_in_the_developers_book_is_up_to_date() -> None:
    assert written("criteria") == table(), "renew it: python tests/criteria_table.py --write"

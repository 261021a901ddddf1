"""Tell what a rulebook says: its rules in a list, and one rule in full with its examples worked."""

from collections.abc import Iterable

from inspector.duties.office import Office
from inspector.gear.kind import Kind
from inspector.gear.outcome import Outcome
from inspector.gear.rulebooks import Change, Direction, RuleLine, RuleShown, WorkedExample
from inspector.gear.verdict import Value
from inspector.language import tr
from inspector.refused import Refused
from inspector.rulebook.club_figures import dimension_of
from inspector.rulebook.club_texts import nearest
from inspector.rulebook.judge import answer_to
from inspector.rulebook.load import Rulebook, packaged
from inspector.rulebook.quantity import Quantity, unknown
from inspector.rulebook.texts import Example, Profile, Rule
from inspector.rulebook.words import listed, must_word, named_quantity, plain_value_word, purpose_word, quantity_word
from inspector.units import Dimension, read, show_typed

_UNKNOWN = "unknown"


def list_rules(office: Office | None, kind: str = "", words: str = "") -> tuple[RuleLine, ...]:
    """The rules whose id, quantity and saying hold every word. kind: only those that speak of this kind.

    office: whose rulebook; the packaged one where there is no register.
    """
    book = _book(office)
    rules = book.rules_for(book.kind(kind)) if kind else book.rules
    sought = words.casefold().split()
    lines = [_line(rule, book) for rule in rules]
    return tuple(one for one in lines if all(word in _searched(one) for word in sought))


def _book(office: Office | None) -> Rulebook:
    return office.rules if office else packaged()


def _searched(line: RuleLine) -> str:
    return f"{line.id} {line.quantity} {line.demand} {line.says} {line.club}".casefold()


def list_profiles() -> tuple[tuple[str, str, str], ...]:
    """The packaged sets that a club may take: name, what it does, source."""
    book = packaged()
    return tuple((key, one.says, _profile_source(one, book)) for key, (one, _) in book.profiles.items())


def _profile_source(profile: Profile, book: Rulebook) -> str:
    return book.source_text(profile.source)


def show_rule(office: Office | None, name: str) -> RuleShown:
    """One rule in full; refused with the nearest names where there is none."""
    book = _book(office)
    rule = next((one for one in book.rules if one.id == name.strip()), None)
    if rule is None:
        known = [one.id for one in book.rules]
        raise Refused(tr("rule"), tr("No rule is called “{name}”.", name=name), nearest(name, known))
    source, own = book.sources[rule.source], _changes(rule, book)
    return RuleShown(
        line=_line(rule, book),
        missing=tr("not known: {outcome}", outcome=_outcome_word(rule.missing)),
        purposes=listed([purpose_word(one) for one in rule.purposes]),
        source=book.source_text(rule.source),
        certainty=_certainty(source.certainty),
        since=rule.since,
        kinds=tuple(kind.name for kind in _kinds(rule, book)),
        examples=tuple(_worked(rule, one) for one in rule.example),
        club_why=" ".join(one.why for one in own if one.why),
        packaged="; ".join(one.packaged for one in own),
    )


def _line(rule: Rule, book: Rulebook) -> RuleLine:
    kinds, own = _kinds(rule, book), _changes(rule, book)
    club = "; ".join(tr("{club} (packaged {packaged})", club=one.club, packaged=one.packaged) for one in own)
    return RuleLine(
        id=rule.id,
        quantity=quantity_word(rule.quantity, kinds[0]) if kinds else rule.quantity,
        demand=_demand(rule),
        otherwise=_outcome_word(rule.otherwise),
        says=rule.says,
        club=club,
        loosened=any(one.direction is Direction.LOOSER for one in own),
    )


def _kinds(rule: Rule, book: Rulebook) -> list[Kind]:
    return [kind for kind in book.kinds.values() if rule in book.rules_for(kind)]


def _changes(rule: Rule, book: Rulebook) -> list[Change]:
    changes: Iterable[Change] = book.club.changes if book.club else ()
    return [one for one in changes if one.about == rule.id and one.direction is not Direction.SAME]


def _demand(rule: Rule) -> str:
    if rule.must == "none_of":
        return tr("none of: {words}", words=", ".join(plain_value_word(one) for one in rule.words))
    return must_word(rule.must, show_typed(rule.limit) or (named_quantity(rule.limit_is) if rule.limit_is else ""))


def _certainty(word: str) -> str:
    words = {
        "read": tr("read in the document itself"),
        "second_hand": tr("read in a paper that restates it"),
        "from_memory": tr("from memory"),
        "common_practice": tr("common practice, no published source"),
        "club": tr("set by a club or by the register itself"),
    }
    return words[word]


def _worked(rule: Rule, example: Example) -> WorkedExample:
    """The example by the book in force; its own limit stands in where the rule's is a quantity."""
    limit_text = example.limit or rule.limit
    limit = _value(limit_text) if limit_text else None
    if example.given == _UNKNOWN:
        given = unknown(tr("not known"))
    else:
        given = Quantity(_value(example.given) if rule.must not in {"none_of"} else Value(word=example.given))
    found = answer_to(rule, given, limit).outcome
    expected = Outcome.FIT.value if example.expect == "note" else example.expect
    told = tr("unknown") if example.given == _UNKNOWN else plain_value_word(show_typed(example.given))
    return WorkedExample(told, show_typed(limit_text), _outcome_word(expected), _outcome_word(found.value))


def _outcome_word(word: str) -> str:
    """What a rule comes to, inside a sentence."""
    words = {
        "fit": tr("fit"),
        "derate": tr("derate"),
        "hold": tr("hold"),
        "retire": tr("retire"),
        "note": tr("note"),
    }
    return words[word]


def _value(text: str) -> Value:
    dimension = dimension_of(text) or Dimension.FACTOR
    return Value(number=read(text, dimension, field=text).si, dimension=dimension)

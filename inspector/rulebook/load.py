"""Reads the packaged rulebook: its text, kinds and checks at once, its law when it is first asked for."""

import hashlib
from collections.abc import Callable, Iterator, Mapping
from datetime import date
from functools import cached_property, partial
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import TYPE_CHECKING, Any

import tomli
from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.kind import Check, Kind
from inspector.gear.rulebooks import BookFault, Change, Direction
from inspector.language import once_a_language, sayer, tr
from inspector.refused import Refused
from inspector.rulebook import texts
from inspector.rulebook.texts import Say, taken

if TYPE_CHECKING:
    from inspector.rulebook.law import Law
    from inspector.rulebook.rig_texts import Joint, Role
    from inspector.units import Figure


class ClubPart(Struct, frozen=True):
    """What a club has changed in the packaged rulebook, and what of its file this program cannot use.

    strict: the same book with nothing loosened. one_strict: for each loosened change, the book with that one alone
    taken back. They tell where a loosening has an effect.
    """

    club: str
    title: str
    from_on: date | None
    changes: tuple[Change, ...]
    unfit: tuple[BookFault, ...] = ()
    strict: "Rulebook | None" = None
    one_strict: tuple[tuple[Change, "Rulebook"], ...] = ()

    @property
    def loosened(self) -> tuple[Change, ...]:
        """The changes that are milder than the packaged rulebook."""
        return tuple(one for one in self.changes if one.direction is Direction.LOOSER)


class Rulebook(Struct, frozen=True, dict=True):  # dict: for what is worked out once
    """The rulebook in force. text: all its files in full, in one fixed order; hash: sha256 of that text.

    read_law: gives all that is judged by; it raises BadRulebook with every fault where the files do not hold together,
    so nothing is ever judged by a law with a fault in it. club: what a club has changed, None for the packaged
    rulebook alone.
    """

    text: str
    kinds: dict[str, Kind]
    checks: dict[str, Check]
    read_law: Callable[[], "Law"]
    club: ClubPart | None = None

    @cached_property
    def law(self) -> "Law":
        """Rules, settings, sources, profiles, roles and joints."""
        return self.read_law()

    def with_law(self, **parts: Any) -> "Rulebook":
        """The same rulebook with other parts of its law, by the names they have there."""
        law = replace(self.law, **parts)
        return replace(self, read_law=lambda: law)

    @property
    def rules(self) -> tuple[texts.Rule, ...]:
        """Every rule, in the order of the files."""
        return self.law.rules

    @property
    def settings(self) -> "dict[str, Figure]":
        """The club settings by key."""
        return self.law.settings

    @property
    def setting_texts(self) -> dict[str, texts.Setting]:
        """The same as they are written, with what they say."""
        return self.law.setting_texts

    @property
    def sources(self) -> dict[str, texts.Source]:
        """Where limits come from, by key."""
        return self.law.sources

    @property
    def profiles(self) -> dict[str, tuple[texts.Profile, str]]:
        """The packaged sets that a club may take, each with its text."""
        return self.law.profiles

    @property
    def roles(self) -> "dict[str, Role]":
        """What each kind is in a rig."""
        return self.law.roles

    @property
    def joints(self) -> "tuple[Joint, ...]":
        """How two of them may be joined."""
        return self.law.joints

    @cached_property
    def hash(self) -> str:
        """The name by which a verdict remembers this rulebook."""
        return hashlib.sha256(self.text.encode()).hexdigest()

    @cached_property
    def _rules_by_kind(self) -> dict[str, tuple[texts.Rule, ...]]:
        return {key: tuple(rule for rule in self.rules if _meant_for(rule, kind)) for key, kind in self.kinds.items()}

    def kind(self, key: str) -> Kind:
        """The kind, or a refusal that lists the nearest names."""
        if key in self.kinds:
            return self.kinds[key]
        listed = ", ".join(sorted(self.kinds))
        raise Refused(
            tr("kind"), tr("“{key}” is not a kind of gear.", key=key), tr("Use one of: {kinds}.", kinds=listed)
        )

    @cached_property
    def _in_turn(self) -> dict[str, tuple[texts.Rule, ...]]:
        return {key: tuple(sorted(rules, key=_turn)) for key, rules in self._rules_by_kind.items()}

    def rules_in_turn(self, kind: Kind) -> tuple[texts.Rule, ...]:
        """The same rules in the order of judging: what takes from the strength first, what asks for the rest last."""
        return self._in_turn[kind.key]

    def rules_for(self, kind: Kind) -> tuple[texts.Rule, ...]:
        """The rules that speak of this kind, in the order of the files."""
        return self._rules_by_kind[kind.key]

    def setting(self, key: str) -> float:
        """A club setting in SI."""
        return self.law.settings[key].si

    def source_text(self, key: str) -> str:
        """The source as it prints, with a word where it was not read itself."""
        source = self.law.sources[key]
        mark = _certainty_marks().get(source.certainty)
        return source.text + mark if mark else source.text


@once_a_language
def _certainty_marks() -> dict[str, str]:
    return {"second_hand": tr(" (second-hand)"), "from_memory": tr(" (from memory)")}


def _turn(rule: texts.Rule) -> int:
    return 0 if rule.otherwise == "derate" else 2 if rule.quantity == "strength_left" else 1


def _meant_for(rule: texts.Rule, kind: Kind) -> bool:
    return bool({"*", kind.key, kind.family} & set(rule.for_))


class BadRulebook(Exception):  # noqa: N818
    """The data files do not hold together; `faults` lists every line that is wrong."""

    def __init__(self, faults: list[str]) -> None:
        super().__init__("\n".join(faults))
        self.faults = faults


@once_a_language
def packaged() -> Rulebook:
    """The rulebook that travels with the program; each part of it is read once."""
    named_texts = {name: place.read_text(encoding="utf-8") for name, place in _files(files("inspector.rulebook"), "")}
    book, faults = _begun(named_texts)
    return _whole(book) if faults else book


def _files(folder: Traversable, path: str) -> Iterator[tuple[str, Traversable]]:
    for place in sorted(folder.iterdir(), key=lambda one: one.name):
        if place.is_dir() and place.name in {"rules", "kinds", "profiles"}:
            yield from _files(place, f"{place.name}/")
        elif place.name.endswith(".toml"):
            yield path + place.name, place


def parse(named_texts: Mapping[str, str]) -> Rulebook:
    """A rulebook from its files' texts by name, read at once. Raises BadRulebook with every fault found."""
    return _whole(_begun(named_texts)[0])


def _begun(named_texts: Mapping[str, str]) -> tuple[Rulebook, list[str]]:
    """The kinds and checks, and what is wrong with them; the law is read later, in the language that is spoken now."""
    faults: list[str] = []
    say = sayer()
    checks = {
        one.key: one.as_check() for one in taken(named_texts, "checks.toml", "check", texts.CheckText, say, faults)
    }
    kinds = _kinds(named_texts, checks, say, faults)
    law = partial(_law, named_texts, kinds, say, faults)
    return Rulebook(full_text(named_texts), kinds, checks, law), faults


def _law(named_texts: Mapping[str, str], kinds: dict[str, Kind], say: Say, faults: list[str]) -> "Law":
    """The law; with a fault in it, or in the kinds it speaks of, there is none. Raises BadRulebook."""
    from inspector.rulebook.law import read_law  # here: what judges nothing needs no law

    law, more = read_law(named_texts, kinds, say)
    if faults or more:
        raise BadRulebook([*faults, *more])
    return law


def _whole(book: Rulebook) -> Rulebook:
    law = book.read_law()
    return replace(book, read_law=lambda: law)


def full_text(named_texts: Mapping[str, str]) -> str:
    """All files in one text, each under its name: what a book keeps of an adopted rulebook."""
    return "".join(f"### {name}\n{body}\n" for name, body in sorted(named_texts.items()))


def _kinds(named_texts: Mapping[str, str], checks: dict[str, Check], say: Say, faults: list[str]) -> dict[str, Kind]:
    kinds: dict[str, Kind] = {}
    for name in sorted(name for name in named_texts if name.startswith("kinds/")):
        good, bad = texts.converted([tomli.loads(named_texts[name])], texts.KindText, name, say)
        faults += bad
        for kind in good:
            missing = [key for key in kind.checks if key not in checks]
            faults += [f"{name}: check {key!r} is not in checks.toml" for key in missing]
            if not missing:
                kinds[kind.key] = kind.as_kind(checks)
    return kinds

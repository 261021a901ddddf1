"""Reads the packaged rulebook: kinds, checks, rules, settings, sources and profiles, and the text that a book keeps."""

import hashlib
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import TypeVar

from inspector.gear.kind import Check, Kind
from inspector.gear.rulebooks import BookFault, Change, Direction
from inspector.language import once_a_language, tr
from inspector.refused import Refused
from inspector.rulebook import texts
from inspector.rulebook.rig_texts import Joint, Role, rig_faults
from inspector.units import Dimension, Figure, read


@dataclass(frozen=True)
class ClubPart:
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


@dataclass(frozen=True)
class Rulebook:
    """The law in force. text: all its files in full, in one fixed order; hash: sha256 of that text.

    profiles: the packaged sets a club may take, each with its text. club: what a club has changed, None for the
    packaged rulebook alone. roles: what each kind is in a rig; joints: how two of them may be joined.
    """

    text: str
    kinds: dict[str, Kind]
    checks: dict[str, Check]
    rules: tuple[texts.Rule, ...]
    settings: dict[str, Figure]
    setting_texts: dict[str, texts.Setting]
    sources: dict[str, texts.Source]
    profiles: dict[str, tuple[texts.Profile, str]] = field(default_factory=dict)
    club: ClubPart | None = None
    roles: dict[str, Role] = field(default_factory=dict)
    joints: tuple[Joint, ...] = ()

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
        return self.settings[key].si

    def source_text(self, key: str) -> str:
        """The source as it prints, with a word where it was not read itself."""
        source = self.sources[key]
        return source.text + _certainty_marks().get(source.certainty, "")


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
    """The rulebook that travels with the program; read once."""
    return parse({name: place.read_text(encoding="utf-8") for name, place in _files(files("inspector.rulebook"), "")})


def _files(folder: Traversable, path: str) -> Iterator[tuple[str, Traversable]]:
    for place in sorted(folder.iterdir(), key=lambda one: one.name):
        if place.is_dir() and place.name in {"rules", "kinds", "profiles"}:
            yield from _files(place, f"{place.name}/")
        elif place.name.endswith(".toml"):
            yield path + place.name, place


def parse(named_texts: dict[str, str]) -> Rulebook:
    """A rulebook from its files' texts by name. Raises BadRulebook with every fault found."""
    faults: list[str] = []
    checks = {one.key: one.as_check() for one in _taken(named_texts, "checks.toml", "check", texts.CheckText, faults)}
    settings = {one.key: one for one in _taken(named_texts, "settings.toml", "setting", texts.Setting, faults)}
    sources = {one.key: one for one in _taken(named_texts, "sources.toml", "source", texts.Source, faults)}
    rules: list[texts.Rule] = []
    for name in sorted(name for name in named_texts if name.startswith("rules/")):
        rules += _taken(named_texts, name, "rule", texts.Rule, faults)
    kinds = _kinds(named_texts, checks, faults)
    profiles = _profiles(named_texts, sources, faults)
    faults += cross_faults(kinds, rules, sources, settings)
    roles = _taken(named_texts, "joints.toml", "role", Role, faults)
    joints = tuple(_taken(named_texts, "joints.toml", "joint", Joint, faults))
    faults += rig_faults(roles, list(joints), set(kinds), set(sources), set(settings))
    if faults:
        raise BadRulebook(faults)
    figures = {key: read(one.value, Dimension(one.dimension), field=key) for key, one in settings.items()}
    text = full_text(named_texts)
    by_kind = {kind: role for role in roles for kind in role.kinds}
    return Rulebook(
        text, kinds, checks, tuple(rules), figures, settings, sources, profiles, roles=by_kind, joints=joints
    )


def full_text(named_texts: dict[str, str]) -> str:
    """All files in one text, each under its name: what a book keeps of an adopted rulebook."""
    return "".join(f"### {name}\n{body}\n" for name, body in sorted(named_texts.items()))


Shape = TypeVar("Shape")


def _taken(named_texts: dict[str, str], name: str, table: str, shape: type[Shape], faults: list[str]) -> list[Shape]:
    good, bad = texts.converted(texts.tables_of(named_texts[name], table), shape, name)
    faults += bad
    return good


def _kinds(named_texts: dict[str, str], checks: dict[str, Check], faults: list[str]) -> dict[str, Kind]:
    kinds: dict[str, Kind] = {}
    for name in sorted(name for name in named_texts if name.startswith("kinds/")):
        good, bad = texts.converted([tomllib.loads(named_texts[name])], texts.KindText, name)
        faults += bad
        for kind in good:
            missing = [key for key in kind.checks if key not in checks]
            faults += [f"{name}: check {key!r} is not in checks.toml" for key in missing]
            if not missing:
                kinds[kind.key] = kind.as_kind(checks)
    return kinds


def _profiles(
    named_texts: dict[str, str], sources: dict[str, texts.Source], faults: list[str]
) -> dict[str, tuple[texts.Profile, str]]:
    profiles: dict[str, tuple[texts.Profile, str]] = {}
    for name in sorted(name for name in named_texts if name.startswith("profiles/")):
        good, bad = texts.converted([tomllib.loads(named_texts[name])], texts.Profile, name)
        faults += bad + [f"{name}: unknown source {one.source!r}" for one in good if one.source not in sources]
        profiles |= {one.key: (one, named_texts[name]) for one in good}
    return profiles


def cross_faults(
    kinds: dict[str, Kind],
    rules: list[texts.Rule],
    sources: dict[str, texts.Source],
    settings: dict[str, texts.Setting],
) -> list[str]:
    """What does not fit between the files: unknown kinds, sources, doubled ids, rules without a limit."""
    named = {"*"} | set(kinds) | {kind.family for kind in kinds.values()}
    ids = [rule.id for rule in rules]
    faults = [f"rule {one!r} stands twice" for one in sorted({one for one in ids if ids.count(one) > 1})]
    for rule in rules:
        faults += [f"rule {rule.id!r} speaks of unknown kind {one!r}" for one in rule.for_ if one not in named]
        faults += [f"rule {rule.id!r}: {why}" for why in _rule_faults(rule, sources)]
    faults += [
        f"kind {one.key!r}: unknown source {one.source!r}" for one in kinds.values() if one.source not in sources
    ]
    faults += [f"setting {one.key!r}: unknown source" for one in settings.values() if one.source not in sources]
    return faults


def _rule_faults(rule: texts.Rule, sources: dict[str, texts.Source]) -> list[str]:
    faults = []
    if rule.source not in sources:
        faults.append(f"unknown source {rule.source!r}")
    if rule.must not in {"at_least", "at_most", "above", "below", "none_of", "present"}:
        faults.append(f"must {rule.must!r} is not known")
    if rule.otherwise not in {"retire", "hold", "derate", "note"} or rule.missing not in {"hold", "note"}:
        faults.append("else must be retire, hold, derate or note; missing must be hold or note")
    if (rule.otherwise == "derate") != bool(rule.derate_by):
        faults.append("a derating rule names derate_by, no other does")
    given = {"none_of": rule.words, "present": ("-",)}.get(rule.must, rule.limit or rule.limit_is)
    if not given:
        faults.append("has no limit")
    return faults

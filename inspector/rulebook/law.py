"""Reads the law of the packaged rulebook: rules, settings, sources, profiles and joints, and what holds them together.

It is read when it is first asked for, and then as a whole: a list of gear judges nothing, and whatever is judged is
judged by a law in which no line is wrong.
"""

from collections.abc import Mapping

import tomli
from msgspec import Struct

from inspector.gear.kind import Kind
from inspector.rulebook import texts
from inspector.rulebook.rig_texts import Joint, Role, rig_faults
from inspector.rulebook.texts import Say, taken
from inspector.units import Dimension, Figure, read


class Law(Struct, frozen=True):
    """What a piece and a rig are judged by.

    profiles: the packaged sets a club may take, each with its text. roles: what each kind is in a rig; joints: how two
    of them may be joined.
    """

    rules: tuple[texts.Rule, ...]
    settings: dict[str, Figure]
    setting_texts: dict[str, texts.Setting]
    sources: dict[str, texts.Source]
    profiles: dict[str, tuple[texts.Profile, str]]
    roles: dict[str, Role]
    joints: tuple[Joint, ...]


def read_law(named_texts: Mapping[str, str], kinds: Mapping[str, Kind], say: Say) -> tuple[Law, list[str]]:
    """The law from the files' texts by name, and every fault found; where there is one, the law is not to be used."""
    faults: list[str] = []
    settings = {one.key: one for one in taken(named_texts, "settings.toml", "setting", texts.Setting, say, faults)}
    sources = {one.key: one for one in taken(named_texts, "sources.toml", "source", texts.Source, say, faults)}
    rules: list[texts.Rule] = []
    for name in sorted(name for name in named_texts if name.startswith("rules/")):
        rules += taken(named_texts, name, "rule", texts.Rule, say, faults)
    profiles = _profiles(named_texts, sources, say, faults)
    faults += cross_faults(kinds, rules, sources, settings)
    roles = taken(named_texts, "joints.toml", "role", Role, say, faults)
    joints = tuple(taken(named_texts, "joints.toml", "joint", Joint, say, faults))
    faults += rig_faults(roles, list(joints), set(kinds), set(sources), set(settings))
    by_kind = {kind: role for role in roles for kind in role.kinds}
    figures = {} if faults else _figures(settings)
    return Law(tuple(rules), figures, settings, sources, profiles, by_kind, joints), faults


def _figures(settings: Mapping[str, texts.Setting]) -> dict[str, Figure]:
    return {key: read(one.value, Dimension(one.dimension), field=key) for key, one in settings.items()}


def _profiles(
    named_texts: Mapping[str, str], sources: dict[str, texts.Source], say: Say, faults: list[str]
) -> dict[str, tuple[texts.Profile, str]]:
    profiles: dict[str, tuple[texts.Profile, str]] = {}
    for name in sorted(name for name in named_texts if name.startswith("profiles/")):
        good, bad = texts.converted([tomli.loads(named_texts[name])], texts.Profile, name, say)
        faults += bad + [f"{name}: unknown source {one.source!r}" for one in good if one.source not in sources]
        profiles |= {one.key: (one, named_texts[name]) for one in good}
    return profiles


def cross_faults(
    kinds: Mapping[str, Kind],
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

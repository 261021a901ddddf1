"""Turns the entries of a club's file into changes of the packaged rulebook, or into what is wrong with them."""

from collections.abc import Iterable, Mapping

from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.kind import Kind
from inspector.gear.rulebooks import Change, Direction, Part
from inspector.language import tr
from inspector.rulebook.club_figures import (
    Figures,
    Licence,
    dimension_of,
    figure_fault,
    loosening_fault,
    stricter_is_more,
)
from inspector.rulebook.club_outcomes import outcome_changes
from inspector.rulebook.club_texts import Entry, nearest
from inspector.rulebook.judge import RETIRED_BEFORE
from inspector.rulebook.load import Rulebook
from inspector.rulebook.texts import Rule
from inspector.rulebook.words import named_quantity
from inspector.units import Dimension, read

Licences = Mapping[tuple[str, str, str], tuple[Licence, ...]]
INTERVALS = ("every_days", "every_days_severe", "every_days_special", "reading_every_days")


class Wrong(Struct, frozen=True):
    """Something wrong with an entry. key: the key it stands at."""

    key: str
    says: str


Found = Change | Wrong


def changes_of(entry: Entry, book: Rulebook, licences: Licences | None, profile: str = "") -> list[Found]:
    """The changes of one entry and what is wrong with it. licences: how far figures may be loosened; None for any.

    profile: the packaged set the entry comes from.
    """
    if entry.part is Part.SETTING:
        found = list(_setting(entry, book, licences))
    elif entry.part is Part.INTERVAL:
        found = list(_interval(entry, book, licences))
    else:
        found = list(_of_rule(entry, book, licences))
    return [_placed(one, entry, profile) for one in found]


def _placed(found: Found, entry: Entry, profile: str) -> Found:
    """With line and reason; a loosening without a reason is wrong."""
    if isinstance(found, Wrong):
        return found
    if found.direction is Direction.LOOSER and not entry.text("why").strip() and not profile:
        why = tr("“why” is missing; what is loosened from {packaged} wants its reason.", packaged=found.packaged)
        return Wrong(found.key, f"{title(found)}: {why}")
    return replace(found, why=entry.text("why"), line=entry.line_of(found.key), profile=profile)


def title(change: Change) -> str:
    """What an entry is about, as a fault names it."""
    words = {
        Part.LIMIT: tr("limit of “{about}”", about=change.about),
        Part.SETTING: tr("setting “{about}”", about=change.about),
        Part.INTERVAL: tr("“{key}” of “{about}”", key=change.key, about=change.about),
        Part.OUTCOME: tr("“{key}” of “{about}”", key=change.key, about=change.about),
    }
    return words[change.part]


def _of_rule(entry: Entry, book: Rulebook, licences: Licences | None) -> Iterable[Found]:
    name = entry.text("rule")
    rule = next((one for one in book.rules if one.id == name), None)
    if name == RETIRED_BEFORE:
        yield Wrong("rule", tr("“{rule}” is the register's own law; no club can change it.", rule=name))
    elif rule is None:
        near = nearest(name, [one.id for one in book.rules])
        yield Wrong("rule", tr("No rule is called “{rule}”. {near}", rule=name, near=near))
    elif entry.part is Part.LIMIT:
        yield _limit(entry, rule, book, licences)
    else:
        for key, says in (made := outcome_changes(entry, rule)).faults:
            yield Wrong(key, says)
        yield from made.changes


def _limit(entry: Entry, rule: Rule, book: Rulebook, licences: Licences | None) -> Found:
    text, head = entry.text("limit"), tr("limit of “{rule}”", rule=rule.id)
    if not rule.limit:
        return Wrong("limit", f"{head}: {_no_figure(rule)}")
    dimension = dimension_of(rule.limit) or Dimension.FACTOR
    if why := figure_fault(text, dimension, rule.limit):
        return Wrong("limit", f"{head}: {why}")
    packaged, club = (read(one, dimension, field=rule.id).si for one in (rule.limit, text))
    more = stricter_is_more(rule.must)
    certainty = book.sources[rule.source].certainty
    asked = Figures(packaged, rule.limit, club, more, certainty, book.source_text(rule.source), rule.fixed)
    change = Change(Part.LIMIT, rule.id, "limit", rule.limit, text.strip(), asked.direction, "", 0)
    return _allowed(change, asked, licences)


def _no_figure(rule: Rule) -> str:
    if rule.limit_is:
        behind = named_quantity(rule.limit_is)
        return tr(
            "It has no figure of its own but the {quantity}; change the setting or the interval behind that.",
            quantity=behind,
        )
    return tr("It asks for something to be seen or known and has no figure; only its outcome can be made stricter.")


def _allowed(change: Change, asked: Figures, licences: Licences | None) -> Found:
    if licences is None:
        return change
    if why := loosening_fault(asked, licences.get(change.place, ())):
        says = tr("{title}: {club} is too loose. {why}", title=title(change), club=change.club, why=why)
        return Wrong(change.key, says)
    return change


def _setting(entry: Entry, book: Rulebook, licences: Licences | None) -> Iterable[Found]:
    name, text = entry.text("key"), entry.text("value")
    setting = book.setting_texts.get(name)
    if setting is None:
        near = nearest(name, book.setting_texts)
        yield Wrong("key", tr("No setting is called “{key}”. {near}", key=name, near=near))
        return
    if setting.stricter not in {"more", "less"}:
        yield Wrong("key", tr("Setting “{key}” cannot be changed by a club.", key=name))
        return
    if why := figure_fault(text, Dimension(setting.dimension), setting.value):
        yield Wrong("value", tr("setting “{key}”: {why}", key=name, why=why))
        return
    club = read(text, Dimension(setting.dimension), field=name).si
    source = book.sources[setting.source]
    more = setting.stricter == "more"
    asked = Figures(book.setting(name), setting.value, club, more, source.certainty, book.source_text(setting.source))
    change = Change(Part.SETTING, name, "value", setting.value, text.strip(), asked.direction, "", 0)
    yield _allowed(change, asked, licences)


def _interval(entry: Entry, book: Rulebook, licences: Licences | None) -> Iterable[Found]:
    name = entry.text("for")
    kinds = [kind for kind in book.kinds.values() if name in {"*", kind.key, kind.family}]
    if not kinds:
        known = {*book.kinds, *(kind.family for kind in book.kinds.values())}
        yield Wrong("for", tr("No kind or family is called “{name}”. {near}", name=name, near=nearest(name, known)))
    for key in INTERVALS:
        if key not in entry.values:
            continue
        meant = [kind for kind in kinds if getattr(kind, key)]
        if kinds and not meant:
            yield Wrong(key, tr("“{key}”: no wall is read of “{name}”.", key=key, name=name))
        for kind in meant:
            yield _one_interval(kind, key, int(entry.values[key]), book, licences)


def _one_interval(kind: Kind, key: str, days: int, book: Rulebook, licences: Licences | None) -> Found:
    packaged = getattr(kind, key)
    shown, asked_for = (f"{one} days" for one in (packaged, days))  # read again as a figure, so never translated
    source = book.sources[kind.source]
    asked = Figures(packaged, shown, days, False, source.certainty, book.source_text(kind.source))
    change = Change(Part.INTERVAL, kind.key, key, shown, asked_for, asked.direction, "", 0)
    return _allowed(change, asked, licences)

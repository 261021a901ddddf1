"""The packaged rulebook with a club's changes in it."""

from collections.abc import Iterable, Iterator

from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.kind import Kind
from inspector.gear.rulebooks import BookFault, Change, Direction, Part
from inspector.language import tr
from inspector.rulebook.club_changes import Licences, Wrong, changes_of, title
from inspector.rulebook.club_figures import Licence, dimension_of
from inspector.rulebook.club_texts import ClubText, nearest, read_text
from inspector.rulebook.load import ClubPart, Rulebook
from inspector.rulebook.texts import Rule, Setting, Source
from inspector.units import Dimension, Figure, read

MARK = "### club.toml\n"  # under this name the club's text stands in the full text of its rulebook


class ClubBook(Struct, frozen=True):
    """A club's file read against the packaged rulebook: the rulebook with whatever of it is sound, and all faults."""

    head: ClubText
    book: Rulebook
    changes: tuple[Change, ...]
    faults: tuple[BookFault, ...]


def with_club(packaged: Rulebook, text: str, file: str = "club.toml") -> ClubBook:
    """The packaged rulebook with a club's changes; where an entry is faulty, the packaged figure stands."""
    written = read_text(text, file)
    found, wrong = _found(written, packaged)
    changes, doubled = _once_each(found, file)
    changes, crossed = _sensible(changes, packaged, file)
    faults = tuple(sorted([*written.faults, *wrong, *doubled, *crossed], key=lambda one: (one.line, one.says)))
    sourced = tuple(_with_source(one, packaged, written.club) for one in changes)
    part = ClubPart(written.club, written.title, written.from_on, sourced, faults)
    full = f"{packaged.text}{MARK}{text}\n"
    return ClubBook(written, _built(packaged, full, part), sourced, faults)


def licences_of(packaged: Rulebook) -> Licences:
    """The figures that other printed sources carry, by what they would replace."""
    found: dict[tuple[str, str, str], tuple[Licence, ...]] = {}
    for key, (profile, _) in packaged.profiles.items():
        for change in _profile_changes(key, packaged, None):
            if not isinstance(change, Wrong) and change.part is not Part.OUTCOME:
                dimension = _dimension(change, packaged)
                si = read(change.club, dimension, field=change.about).si
                one = Licence(si, change.club, key, packaged.source_text(profile.source))
                found[change.place] = (*found.get(change.place, ()), one)
    return found


def _dimension(change: Change, packaged: Rulebook) -> Dimension:
    if change.part is Part.SETTING:
        return Dimension(packaged.setting_texts[change.about].dimension)
    return Dimension.DAYS if change.part is Part.INTERVAL else dimension_of(change.packaged) or Dimension.FACTOR


def _profile_changes(key: str, packaged: Rulebook, licences: Licences | None) -> list[Change | Wrong]:
    """A profile's changes. Without licences every figure of it is taken, since its own source carries it."""
    entries = read_text(packaged.profiles[key][1], key).entries
    return [one for entry in entries for one in changes_of(entry, packaged, licences, key)]


def _found(written: ClubText, packaged: Rulebook) -> tuple[list[Change], list[BookFault]]:
    licences = licences_of(packaged)
    changes: list[Change] = []
    faults: list[BookFault] = []
    for key in written.profiles:
        if key not in packaged.profiles:
            why = tr("No profile is called “{key}”. {near}", key=key, near=nearest(key, packaged.profiles))
            faults.append(BookFault(written.file, written.profile_line, why))
            continue
        made = _profile_changes(key, packaged, licences)
        changes += [replace(one, line=written.profile_line) for one in made if isinstance(one, Change)]
        wrong = [one.says for one in made if isinstance(one, Wrong)]
        faults += [BookFault(written.file, written.profile_line, f"{key}: {says}") for says in wrong]
    for entry in written.entries:
        for one in changes_of(entry, packaged, licences):
            if isinstance(one, Wrong):
                faults.append(BookFault(written.file, entry.line_of(one.key), one.says))
            else:
                changes.append(one)
    return changes, faults


def _once_each(changes: Iterable[Change], file: str) -> tuple[list[Change], list[BookFault]]:
    """Each figure may be set once; where it is set again, the packaged figure stands and both places are named."""
    listed = list(changes)
    kept, faults = [], []
    for place in dict.fromkeys(one.place for one in listed):
        same = [one for one in listed if one.place == place]
        if len(same) == 1:
            kept += same
            continue
        first, again = same[0], same[-1]
        why = tr("{title} is set already on line {line}; set it once.", title=title(again), line=first.line)
        faults.append(BookFault(file, again.line, why))
    return kept, faults


def _sensible(changes: list[Change], packaged: Rulebook, file: str) -> tuple[list[Change], list[BookFault]]:
    """A harder life never makes the time between inspections longer; changes that would are left out."""
    kinds = _kinds(packaged, changes)
    wrong = {
        key for key, kind in kinds.items() if not kind.every_days_special <= kind.every_days_severe <= kind.every_days
    }
    faults = []
    for key in sorted(wrong):
        about = next(one for one in changes if one.part is Part.INTERVAL and one.about == key)
        why = tr(
            "“{kind}” would be inspected every {special} days after an event, every {severe} in salt or mud and every "
            "{normal} otherwise; a harder life never makes it longer.",
            kind=key,
            special=kinds[key].every_days_special,
            severe=kinds[key].every_days_severe,
            normal=kinds[key].every_days,
        )
        faults.append(BookFault(file, about.line, why))
    return [one for one in changes if one.part is not Part.INTERVAL or one.about not in wrong], faults


def _with_source(change: Change, packaged: Rulebook, club: str) -> Change:
    """Where the club's figure comes from, with the packaged one and its source beside it."""
    if change.profile:
        source = packaged.source_text(packaged.profiles[change.profile][0].source)
        said = tr("{source}; chosen by {club}", source=source, club=club)
    else:
        said = tr("Set by {club}: {why}", club=club, why=change.why or tr("no reason given"))
    return replace(change, source=tr("{said}; packaged: {packaged}", said=said, packaged=change.packaged))


def _built(packaged: Rulebook, text: str, part: ClubPart) -> Rulebook:
    """The book with all changes, and beside it those with the loosened ones taken back."""
    strict = replace(part, changes=tuple(one for one in part.changes if one.direction is not Direction.LOOSER))
    one_strict = tuple(
        (change, _changed(packaged, text, replace(part, changes=tuple(one for one in part.changes if one != change))))
        for change in part.loosened
    )
    if part.loosened:
        part = replace(part, strict=_changed(packaged, text, strict), one_strict=one_strict)
    return _changed(packaged, text, part)


def _changed(packaged: Rulebook, text: str, part: ClubPart) -> Rulebook:
    changes = part.changes
    settings = {one.about: one for one in changes if one.part is Part.SETTING}
    book = packaged.with_law(
        rules=tuple(_rule(rule, changes) for rule in packaged.rules),
        settings=packaged.settings | {key: _figure(one, packaged) for key, one in settings.items()},
        setting_texts={key: _setting(one, settings.get(key)) for key, one in packaged.setting_texts.items()},
        sources=packaged.sources | dict(_sources(changes, packaged)),
    )
    return replace(book, text=text, kinds=_kinds(packaged, changes), club=part)


def _figure(change: Change, packaged: Rulebook) -> Figure:
    return read(change.club, _dimension(change, packaged), field=change.about)


def _setting(setting: Setting, change: Change | None) -> Setting:
    return replace(setting, value=change.club) if change else setting


def _rule(rule: Rule, changes: Iterable[Change]) -> Rule:
    """The rule with its limit, outcome or answer to silence as the club has it."""
    own = [one for one in changes if one.about == rule.id and one.part in {Part.LIMIT, Part.OUTCOME}]
    named = {"else": "otherwise"}
    put = {named.get(one.key, one.key): one.club for one in own if one.direction is not Direction.SAME}
    return replace(rule, **put, source=_source_key(rule.id)) if put else rule


def _source_key(rule: str) -> str:
    return f"club/{rule}"


def _sources(changes: Iterable[Change], packaged: Rulebook) -> Iterator[tuple[str, Source]]:
    """For each changed rule, where the club's figure comes from and where the packaged one does."""
    for rule in packaged.rules:
        own = [one for one in changes if one.about == rule.id and one.part in {Part.LIMIT, Part.OUTCOME}]
        if said := "; ".join(one.source for one in own if one.direction is not Direction.SAME):
            text = tr("{said} by {source}", said=said, source=packaged.source_text(rule.source))
            yield _source_key(rule.id), Source(_source_key(rule.id), text, "club")


def _kinds(packaged: Rulebook, changes: Iterable[Change]) -> dict[str, Kind]:
    kinds = dict(packaged.kinds)
    for one in changes:
        if one.part is Part.INTERVAL:
            days = round(read(one.club, Dimension.DAYS, field=one.about).si)
            kinds[one.about] = _with_days(kinds[one.about], one.key, days)
    return kinds


def _with_days(kind: Kind, key: str, days: int) -> Kind:
    changed: dict[str, int] = {key: days}
    return replace(kind, **changed)

"""Reads a club's rulebook file into entries, each with its line, and says of every fault where it stands.

The head says whose book it is, since when and why; then follow [[limit]], [[setting]], [[interval]] and [[outcome]].
"""

import difflib
import re
from collections.abc import Iterable
from datetime import date, datetime
from typing import Any

import tomli
from msgspec import Struct

from inspector.gear.rulebooks import BookFault, Part
from inspector.language import tr
from inspector.rulebook.club_lines import TableLines, nth, table_lines

MOST_SIGNS = 200_000
_LONGEST_TEXT = 500
_PLACE = re.compile(r"\(at (?:line (\d+), column (\d+)|end of document)\)$")
_HEAD = {"club": str, "title": str, "from": date, "why": str, "profile": list}
_KEYS: dict[Part, dict[str, type]] = {
    Part.LIMIT: {"rule": str, "limit": str, "why": str},
    Part.SETTING: {"key": str, "value": str, "why": str},
    Part.INTERVAL: {
        "for": str,
        "every_days": int,
        "every_days_severe": int,
        "every_days_special": int,
        "reading_every_days": int,
        "why": str,
    },
    Part.OUTCOME: {"rule": str, "else": str, "missing": str, "why": str},
}
_NEEDED = {
    Part.LIMIT: ("rule", "limit"),
    Part.SETTING: ("key", "value"),
    Part.INTERVAL: ("for",),
    Part.OUTCOME: ("rule",),
}


class Entry(Struct, frozen=True):
    """One table of a club's file or of a profile: its values and the line of each."""

    part: Part
    values: dict[str, Any]
    lines: TableLines

    def text(self, key: str) -> str:
        """The value as text; empty where it is not given."""
        return str(self.values.get(key, ""))

    def line_of(self, key: str) -> int:
        """The line of a key."""
        return self.lines.line_of(key)


class ClubText(Struct, frozen=True):
    """A club's file as written: head, entries, profiles, and whatever is wrong with its form."""

    file: str
    club: str
    title: str
    from_on: date | None
    why: str
    profiles: tuple[str, ...]
    profile_line: int
    entries: tuple[Entry, ...]
    faults: tuple[BookFault, ...]


def decoded(body: bytes, file: str) -> tuple[str, tuple[BookFault, ...]]:
    """The text of a file's bytes; a fault where it is too long or not written as UTF-8."""
    if len(body) > MOST_SIGNS:
        return "", (BookFault(file, 0, tr("It is far too long for a club's rulebook.")),)
    try:
        return body.decode("utf-8-sig"), ()
    except UnicodeDecodeError as error:
        line = body.count(b"\n", 0, error.start) + 1
        return "", (BookFault(file, line, tr("It holds signs that are not UTF-8; save the file as UTF-8 text.")),)


def read_text(text: str, file: str) -> ClubText:
    """The file with every fault of its form. Never raises."""
    try:
        tables = tomli.loads(text.removeprefix("\ufeff"))
    except (ValueError, RecursionError) as error:
        fault = _syntax_fault(file, text, error)
        return ClubText(file, "", "", None, "", (), 0, (), (fault,))
    lines = table_lines(text.replace("\r\n", "\n").removeprefix("\ufeff"))
    faults = [*_head_faults(tables, lines[0], file), *_unknown_tables(tables, lines, file)]
    entries: list[Entry] = []
    for part in Part:
        found, wrong = _entries(tables.get(part.value, []), part, lines, file)
        entries += found
        faults += wrong
    entries.sort(key=lambda one: one.lines.line)
    faults.sort(key=lambda one: one.line)
    return _club_text(tables, lines[0], tuple(entries), tuple(faults), file)


def _club_text(
    tables: dict[str, Any], head: TableLines, entries: tuple[Entry, ...], faults: tuple[BookFault, ...], file: str
) -> ClubText:
    profiles = tables.get("profile", [])
    return ClubText(
        file=file,
        club=_text(tables.get("club")),
        title=_text(tables.get("title")),
        from_on=tables["from"] if _is(tables.get("from"), date) else None,
        why=_text(tables.get("why")),
        profiles=tuple(one for one in profiles if isinstance(one, str)) if isinstance(profiles, list) else (),
        profile_line=head.line_of("profile"),
        entries=entries,
        faults=faults,
    )


def _text(value: object) -> str:
    return value.strip() if isinstance(value, str) else ""


def _syntax_fault(file: str, text: str, error: Exception) -> BookFault:
    """What the reader of TOML stumbled over, with the line and column it names."""
    if isinstance(error, RecursionError):
        return BookFault(file, 0, tr("Its brackets are nested too deep."))
    said = str(error)
    found = _PLACE.search(said)
    what = tr("This is not written as TOML: {why}.", why=_PLACE.sub("", said).strip())
    if found and found[1]:
        return BookFault(file, int(found[1]), what, int(found[2]))
    return BookFault(file, text.count("\n") + 1 if found else 0, what)


def _head_faults(tables: dict[str, Any], head: TableLines, file: str) -> Iterable[BookFault]:
    for key, wanted in _HEAD.items():
        value = tables.get(key)
        if value is None:
            if key != "profile":
                why = tr("“{key}” is missing; {wanted} is wanted.", key=key, wanted=_wanted(key, wanted))
                yield BookFault(file, 1, tr("head of the file: {why}", why=why))
        elif why := _value_fault(key, value, wanted):
            yield BookFault(file, head.line_of(key), tr("“{key}”: {why}", key=key, why=why))
    for value in tables.get("profile", []) if _is(tables.get("profile"), list) else []:
        if not isinstance(value, str):
            why = tr('“profile”: names in quotes are wanted, such as ["hook-opening-ten-percent"].')
            yield BookFault(file, head.line_of("profile"), why)


def _unknown_tables(tables: dict[str, Any], lines: list[TableLines], file: str) -> Iterable[BookFault]:
    known = [*_HEAD, *(part.value for part in Part)]
    for key in tables:
        if key not in known:
            line = next((one.line for one in lines if one.name.split(".")[0] == key), lines[0].line_of(key))
            why = tr("“{key}” is not known here.", key=key)
            yield BookFault(file, line, f"{why} {nearest(key, known)}")


def _entries(given: Any, part: Part, lines: list[TableLines], file: str) -> tuple[list[Entry], list[BookFault]]:
    if not isinstance(given, list) or not all(isinstance(one, dict) for one in given):
        return [], [_form_fault(part, lines, file)]
    entries: list[Entry] = []
    faults: list[BookFault] = []
    for number, values in enumerate(given):
        place = nth(lines, part.value, number)
        if place is None:
            return entries, [*faults, _form_fault(part, lines, file)]
        entry = Entry(part, values, place)
        wrong = [BookFault(file, line, says) for line, says in _entry_faults(entry)]
        faults += wrong
        if not wrong:
            entries.append(entry)
    return entries, faults


def _form_fault(part: Part, lines: list[TableLines], file: str) -> BookFault:
    """The entries were written as one value or under another kind of heading."""
    headings = [one.line for one in lines if one.name == part.value and not one.is_one_of_many]
    line = headings[0] if headings else lines[0].line_of(part.value)
    why = tr("Write each {part} as a table of its own, headed by [[{part}]].", part=part.value)
    return BookFault(file, line, tr("“{part}”: {why}", part=part.value, why=why))


def _entry_faults(entry: Entry) -> Iterable[tuple[int, str]]:
    keys = _KEYS[entry.part]
    for key, value in entry.values.items():
        if key not in keys:
            why = tr("“{key}” is not known in a {part}.", key=key, part=entry.part.value)
            yield entry.line_of(key), f"{why} {nearest(key, list(keys))}"
        elif why := _value_fault(key, value, keys[key]):
            yield entry.line_of(key), tr("“{key}” of a {part}: {why}", key=key, part=entry.part.value, why=why)
    for key in _NEEDED[entry.part]:
        if key not in entry.values:
            yield entry.lines.line, tr("This {part} has no “{key}”.", part=entry.part.value, key=key)
    said = [key for key in keys if key not in ("why", *_NEEDED[entry.part])]
    if said and not set(said) & set(entry.values):
        wanted = ", ".join(said)
        yield entry.lines.line, tr("This {part} sets nothing; write {keys}.", part=entry.part.value, keys=wanted)


def _is(value: object, wanted: type) -> bool:
    """Whether a value is of the type; true is no number and an hour of a day is no day."""
    if isinstance(value, bool) or (wanted is date and isinstance(value, datetime)):
        return False
    return isinstance(value, wanted)


def _value_fault(key: str, value: object, wanted: type) -> str:
    if not _is(value, wanted):
        return tr("“{value}” was found; {wanted} is wanted.", value=_shown(value), wanted=_wanted(key, wanted))
    if isinstance(value, str):
        if not value.strip():
            return tr("It is empty; {wanted} is wanted.", wanted=_wanted(key, wanted))
        if len(value) > _LONGEST_TEXT:
            return tr("It is longer than {most} signs.", most=_LONGEST_TEXT)
        if any(not sign.isprintable() and sign not in "\n\r\t" for sign in value):
            return tr("It holds a sign that cannot be printed.")
    if isinstance(value, int) and not 1 <= value <= 36500:
        return tr("“{value}” was found; a number of days from 1 to 36500 is wanted.", value=_shown(value))
    return ""


def _wanted(key: str, wanted: type) -> str:
    if key in {"limit", "value"}:
        return tr('a figure with its unit in quotes, such as "9 %",')
    words = {
        str: tr("a text in quotes"),
        int: tr("a whole number of days without quotes"),
        date: tr("a day such as 2026-12-01, without quotes and hour,"),
        list: tr('a list of names such as ["hook-opening-ten-percent"]'),
    }
    return words[wanted]


def _shown(value: object) -> str:
    """A value as the club wrote it, short."""
    try:
        said = str(value).lower() if isinstance(value, bool) else str(value)
    except (ValueError, RecursionError):  # thousands of digits, or of brackets
        return "…"
    return said if len(said) <= 60 else said[:57] + "…"


def nearest(word: str, known: Iterable[str], most: int = 3) -> str:
    """The names that come nearest to a misspelt one, or all of a few."""
    names = sorted(known)
    close = difflib.get_close_matches(word, names, most, 0.5) or (names if len(names) <= 12 else [])
    return tr("Nearest: {names}.", names=", ".join(close)) if close else tr("No name comes near it.")

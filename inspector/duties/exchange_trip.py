"""A trip as a readable file: written for another copy of the register, and read from one.

The file is TOML. People stand in it by name, because ids belong to one register.
"""

import re
import tomllib
from dataclasses import dataclass, replace
from datetime import date, datetime

import tomli_w

from inspector.duties.look_up import trip, trips
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.gear.trip import Ground, Trip
from inspector.language import tr
from inspector.refused import Refused
from inspector.rulebook.club_lines import table_lines

_KEYS = (
    *("ref", "name", "place", "ground", "first_on", "last_on"),
    *("leader", "note", "people", "vehicles", "kit"),
)
_NEEDED = ("ref", "name", "ground", "first_on", "last_on")
_MOST_BYTES = 1_000_000


def export_trip(office: Office, ref: str) -> str:
    """The text of the file; people by name."""
    found = trip(office, ref)
    with office.book.reading() as page:
        names = {one.id: one.name for one in page.people()}
    return trip_text(replace(found, people=tuple(names.get(key, key) for key in found.people)))


def import_trip(office: Office, data: bytes, source: str, as_ref: str = "") -> Trip:
    """Plan the trip of a file. source: the file's name, for refusals; as_ref: the reference it gets instead of its own.

    What a refusal names stands in the file, with its line where it can be found.
    """
    file = _File(_decoded(data, source), source)
    read = _trip_of(file)
    wanted = replace(read, ref=as_ref or read.ref)
    if any(one.ref.casefold() == wanted.ref.casefold() for one in trips(office)):
        why = tr("The register has a trip {ref} already.", ref=wanted.ref)
        what = tr("Import it under a free reference: --as NEW. The trip in the register stays as it is.")
        raise Refused(file.at("ref"), why, what)
    try:
        return plan_trip(office, wanted)
    except Refused as refusal:
        key = _key_of(refusal.field)
        field = file.at(key, refusal.why) if key and not (as_ref and key == "ref") else refusal.field
        raise Refused(field, refusal.why, refusal.what_to_do) from refusal


def trip_text(planned: Trip) -> str:
    """The trip as TOML, its people as they stand in it; its id is left out."""
    table = {key: getattr(planned, key) for key in _KEYS}
    written = {key: list(one) if isinstance(one, tuple) else one for key, one in table.items()}
    written["ground"] = planned.ground.value
    head = tr("A trip of a recovery gear register. Vehicles and kit stand by their tags, people by their names.")
    return f"# {head}\n{tomli_w.dumps(written)}"


def read_trip(text: str, source: str) -> Trip:
    """The trip of a file's text, with an empty id and people by name. Raises Refused with the key and its line."""
    return _trip_of(_File(text, source))


@dataclass(frozen=True, slots=True)
class _File:
    """The text of a file and its name."""

    text: str
    source: str

    def table(self) -> dict[str, object]:
        """What the file says; refused where it is no TOML, or says or lacks what a trip does not."""
        try:
            table = tomllib.loads(self.text)
        except (ValueError, RecursionError) as error:  # a number of thousands of digits is no TOMLDecodeError
            what = tr("Mend that place; a text stands in quotes, a day as 2026-11-28.")
            raise Refused(self.source, tr("It is no TOML: {why}.", why=error), what) from error
        for key in table:
            if key not in _KEYS:
                what = tr("Use: {known}.", known=", ".join(_KEYS))
                raise Refused(self.at(key), tr("A trip has no “{key}”.", key=key), what)
        for key in _NEEDED:
            if key not in table:
                raise Refused(f"{self.source}, {key}", tr("It is missing."), tr("Write it into the file."))
        return table

    def at(self, key: str, about: str = "") -> str:
        """The file, the line and the key. about: a refusal that may quote one member of a list; then its own line."""
        line = next((one.line_of(key) for one in table_lines(self.text) if key in one.keys or one.name == key), 1)
        line += self._further(line, about)
        return tr("{source}, line {line}, {key}", source=self.source, line=line, key=key)

    def _further(self, line: int, about: str) -> int:
        """How many lines below its key the quoted member stands, as it was written; 0 where it cannot be found."""
        found = re.search("[“„](.+?)[”“]", about)  # as one language quotes and another
        member = found[1] if found else ""
        for further, one in enumerate(self.text.split("\n")[line - 1 :] if member else ()):
            if f'"{member}"' in one or f"'{member}'" in one:
                return further
        return 0


@dataclass(frozen=True, slots=True)
class _Read:
    """The values of a file, each refused with its key and line where it is of another sort."""

    file: _File
    table: dict[str, object]

    def text(self, key: str) -> str:
        """A text; empty where it is left out."""
        value = self.table.get(key, "")
        if not isinstance(value, str):
            raise Refused(self.file.at(key), tr("It is no text."), tr("Write it in quotes."))
        return value

    def day(self, key: str) -> date:
        """A day without a time."""
        value = self.table[key]
        if not isinstance(value, date) or isinstance(value, datetime):
            raise Refused(self.file.at(key), tr("It is no day."), tr("Write it as 2026-11-28, without quotes."))
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        """A list of texts; none where it is left out."""
        value = self.table.get(key, [])
        if not isinstance(value, list) or not all(isinstance(one, str) for one in value):
            raise Refused(self.file.at(key), tr("It is no list of texts."), tr('Write it as ["one", "other"].'))
        return tuple(value)

    def ground(self) -> Ground:
        """What the trip drives on."""
        word = self.text("ground")
        known = {one.value: one for one in Ground}
        if word not in known:
            what = tr("Use one of: {known}.", known=", ".join(known))
            raise Refused(self.file.at("ground"), tr("“{word}” is no ground.", word=word), what)
        return known[word]


def _trip_of(file: _File) -> Trip:
    read = _Read(file, file.table())
    return Trip(
        id="",
        ref=read.text("ref"),
        name=read.text("name"),
        place=read.text("place"),
        ground=read.ground(),
        first_on=read.day("first_on"),
        last_on=read.day("last_on"),
        leader=read.text("leader"),
        vehicles=read.texts("vehicles"),
        kit=read.texts("kit"),
        people=read.texts("people"),
        note=read.text("note"),
    )


def _decoded(data: bytes, source: str) -> str:
    if len(data) > _MOST_BYTES:
        raise Refused(source, tr("It is far too long for a trip."), tr("Choose the file of a trip."))
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise Refused(source, tr("It is no UTF-8 text."), tr("Save it as UTF-8 and import it again.")) from error


def _key_of(field: str) -> str:
    """The key in a file whose value a refused field is; empty where there is none."""
    keys = {tr("reference"): "ref", tr("last day"): "last_on"}
    keys |= {
        tr("place"): "place",
        tr("leader"): "leader",
        tr("name"): "name",
        tr("kit"): "kit",
        tr("vehicles"): "vehicles",
        tr("people"): "people",
    }
    return keys.get(field, "")

"""A trip as a readable file: written for another copy of the register, and read from one.

The file is TOML. People stand in it by name, because ids belong to one register.
"""

import re
from collections.abc import Sequence
from datetime import date, datetime

import tomli
import tomli_w
from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.look_up import trip, trips
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.gear.trip import Ground, Ride, Trip
from inspector.language import tr
from inspector.refused import Refused
from inspector.rulebook.club_lines import table_lines

_KEYS = (
    *("ref", "name", "place", "ground", "first_on", "last_on"),
    *("leader", "note", "people", "vehicles", "kit", "rides"),
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
    cars = dict.fromkeys(one.vehicle for one in planned.rides)
    written["rides"] = {car: [one.tag for one in planned.rides if one.vehicle == car] for car in cars}
    head = tr("A trip of a recovery gear register. Vehicles and kit stand by their tags, people by their names.")
    return f"# {head}\n{tomli_w.dumps(written)}"


def read_trip(text: str, source: str) -> Trip:
    """The trip of a file's text, with an empty id and people by name. Raises Refused with the key and its line."""
    return _trip_of(_File(text, source))


class _File(Struct, frozen=True):
    """The text of a file and its name."""

    text: str
    source: str

    def table(self) -> dict[str, object]:
        """What the file says; refused where it is no TOML, or says or lacks what a trip does not."""
        try:
            table = tomli.loads(self.text)
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


class _Read(Struct, frozen=True):
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

    def rides(self, vehicles: Sequence[str], kit: Sequence[str]) -> tuple[Ride, ...]:
        """What rides on which vehicle, by the vehicle's tag; none where it is left out."""
        value = self.table.get("rides", {})
        if not isinstance(value, dict) or not all(isinstance(one, list) for one in value.values()):
            what = tr('Write it as V-04 = ["SH-01", "KS-03"] below [rides].')
            raise Refused(self.file.at("rides"), tr("It is no table of vehicles."), what)
        found = [
            Ride(self._one_of(kit, str(tag)), self._one_of(vehicles, car)) for car, on in value.items() for tag in on
        ]
        for one in found:
            if sum(each.tag == one.tag for each in found) > 1:
                why = tr("“{one}” stands in it twice.", one=one.tag)
                raise Refused(self.file.at("rides"), why, tr("Leave one of the two out."))
        return tuple(found)

    def _one_of(self, known: Sequence[str], tag: str) -> str:
        """The tag as the file's own list has it; refused where that has it not."""
        if found := next((one for one in known if one.casefold() == tag.casefold()), ""):
            return found
        why = tr("“{tag}” stands neither in its kit nor among its vehicles.", tag=tag)
        raise Refused(self.file.at("rides"), why, tr("Use tags of the lists “kit” and “vehicles” of this file."))

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
    vehicles, kit = read.texts("vehicles"), read.texts("kit")
    return Trip(
        id="",
        ref=read.text("ref"),
        name=read.text("name"),
        place=read.text("place"),
        ground=read.ground(),
        first_on=read.day("first_on"),
        last_on=read.day("last_on"),
        leader=read.text("leader"),
        vehicles=vehicles,
        kit=kit,
        people=read.texts("people"),
        note=read.text("note"),
        rides=read.rides(vehicles, kit),
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

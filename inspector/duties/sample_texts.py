"""Reads the sample register's text files into deeds. Days are offsets from the day the register is built."""

import csv
from collections.abc import Iterator
from datetime import date, timedelta
from importlib.resources import files
from pathlib import Path

import tomli
import tomli_w
from msgspec import Struct

from inspector.duties.before_use import asked_checks
from inspector.gear.custody import WentThrough
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.inspection import (
    Answer,
    InspectionKind,
    Method,
    NewInspection,
    Reading,
    Surface,
    method_for,
)
from inspector.gear.item import NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis, Grade, Kind
from inspector.gear.kit_check import Seen
from inspector.gear.outcome import Purpose
from inspector.gear.person import Competence, Person
from inspector.gear.trip import Ground, Trip, Vehicle
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.units import Dimension, Figure, read

Row = dict[str, str]


class Sample(Struct, frozen=True):
    """The texts of a sample register and the day they are counted from."""

    folder: Path
    built_on: date

    def day(self, offset: str | int) -> date:
        """The day an offset stands for."""
        return self.built_on + timedelta(days=int(offset))

    def maybe_day(self, offset: str) -> date | None:
        """The day, or None for an empty cell."""
        return self.day(offset) if offset.strip() else None

    def rows(self, name: str) -> Iterator[Row]:
        """The rows of a CSV file."""
        with (self.folder / name).open(encoding="utf-8", newline="") as text:
            yield from csv.DictReader(text)

    def text(self, name: str) -> str:
        """A file as it stands."""
        return (self.folder / name).read_text(encoding="utf-8")

    def tables(self, name: str) -> dict[str, object]:
        """A TOML file."""
        return tomli.loads(self.text(name))

    def names(self, folder: str) -> tuple[str, ...]:
        """The TOML files of a folder within, sorted."""
        return tuple(sorted(f"{folder}/{one.name}" for one in (self.folder / folder).glob("*.toml")))


def sample_folder() -> Path:
    """The sample register: inside the wheel, or beside the package in a checkout."""
    packaged = Path(str(files("inspector") / "_sample_register"))
    return packaged if packaged.is_dir() else Path(__file__).resolve().parents[2] / "sample_register"


def listed_tables(tables: dict[str, object], name: str) -> list[dict[str, object]]:
    """The tables of a TOML file that stand under one name."""
    found = tables.get(name, [])
    return list(found) if isinstance(found, list) else []


def person(sample: Sample, table: dict[str, object]) -> Person:
    """A person of club.toml; `competent` lists scope and days."""
    listed = table.get("competent", [])
    held = [Competence(str(one["scope"]), sample.day(one["since"])) for one in _tables(listed)]
    return Person("", str(table["name"]), str(table["role"]), tuple(held))


def _tables(value: object) -> list[dict[str, str | int]]:
    return [one for one in value if isinstance(one, dict)] if isinstance(value, list) else []


def vehicle(table: dict[str, object]) -> Vehicle:
    """A vehicle of club.toml."""
    gvm = read(str(table["gvm"]), Dimension.MASS, field="gvm")
    return Vehicle(
        id="",
        tag=str(table["tag"]),
        name=str(table["name"]),
        owner=str(table["owner"]),
        gvm=gvm,
        mass=read(str(table["mass"]), Dimension.MASS, field="mass"),
        front_spacing=_length(table, "front_spacing"),
        rear_spacing=_length(table, "rear_spacing"),
    )


def _length(table: dict[str, object], key: str) -> Figure | None:
    return read(str(table[key]), Dimension.LENGTH, field=key) if key in table else None


def weighing(table: dict[str, object]) -> Figure:
    """The mass of a later weighing in club.toml."""
    return read(str(table["mass"]), Dimension.MASS, field="mass")


def fitted(row: Row) -> Fitted | None:
    """Where a row of fittings.csv puts a part; None where it was taken off."""
    return Fitted(row["vehicle"], End(row["end"]), Side(row["side"])) if row["vehicle"] else None


def trip(sample: Sample, table: dict[str, object]) -> Trip:
    """A trip of trips.toml."""
    return Trip(
        id="",
        ref=str(table["ref"]),
        name=str(table["name"]),
        place=str(table["place"]),
        ground=Ground(str(table["ground"])),
        first_on=sample.day(str(table["first"])),
        last_on=sample.day(str(table["last"])),
        leader=str(table["leader"]),
        vehicles=_listed(table, "vehicles"),
        kit=_listed(table, "kit"),
        people=_listed(table, "people"),
    )


def _listed(table: dict[str, object], key: str) -> tuple[str, ...]:
    value = table[key]
    return tuple(map(str, value)) if isinstance(value, list) else ()


def piece(sample: Sample, row: Row, kind: Kind) -> NewItem:
    """A row of gear.csv or guests.csv."""
    figure = read(row["rating"], _rating_dimension(row), field="rating") if row["rating"] else None
    rating = Rating(Basis(row["basis"]), figure, float(row["factor"]) if row["factor"] else None, row["stated_on"])
    return NewItem(
        tag=row["tag"],
        kind=row["kind"],
        rating=rating,
        maker_mark=row["maker"],
        serial=row["serial"],
        material=row["material"],
        sizes=sizes(row, kind),
        owner=row["owner"],
        place=row["place"],
        provenance=Provenance(row["provenance"]),
        made_on=sample.maybe_day(row["made"]),
        in_service_on=sample.maybe_day(row["in_service"]),
        kept_for=tuple(Purpose(one) for one in row["kept_for"].split()),
        fitted_to=row["fitted_to"],
        note=row["note"],
        fitted_end=End(row["fitted_end"]),
        fitted_side=Side(row["fitted_side"]),
        from_whom=row.get("from_whom", ""),
        borrowed_until=sample.maybe_day(row.get("until", "")),
    )


def sizes(row: Row, kind: Kind) -> tuple[SizeAsNew, ...]:
    """The sizes that a row names: "bow_diameter=19 mm; pin_diameter=22 mm"."""
    dimensions = {size.key: size.dimension for size in kind.sizes}
    return tuple(SizeAsNew(key, read(typed, dimensions[key], field=key)) for key, typed in _pairs(row["sizes"], "="))


def _rating_dimension(row: Row) -> Dimension:
    return Dimension.MASS if row["basis"] == Basis.TOWED_MASS.value else Dimension.FORCE


def inspection(sample: Sample, row: Row, kind: Kind) -> NewInspection:
    """A row of inspections.csv. grades: "all good", or only the checks that were not; readings: "wall@top=4.6 mm"."""
    return NewInspection(
        on=sample.day(row["day"]),
        kind=InspectionKind(row["kind"]),
        by=row["by"],
        competent=False,  # the deed works it out
        answers=tuple(_answers(row["grades"], kind)),
        readings=tuple(_reading(row, place, typed, kind) for place, typed in _pairs(row["readings"], "=")),
        note=row["note"],
    )


def _answers(grades: str, kind: Kind) -> Iterator[Answer]:
    said = dict(_pairs(grades.removeprefix("all good").strip(" ;"), " "))
    unknown = set(said) - {check.key for check in kind.checks}
    if unknown:
        raise ValueError(f"{kind.key} has no check {sorted(unknown)}")
    for check in kind.checks:
        yield Answer(check.key, Grade(said.get(check.key, Grade.GOOD.value)))


def _reading(row: Row, place: str, typed: str, kind: Kind) -> Reading:
    key, _, point = place.partition("@")
    measure = kind.measure(key)
    if measure is None:
        raise ValueError(f"{kind.key} has no measure {key}")
    return Reading(
        measure=key,
        figure=read(typed, measure.dimension, field=key),
        point=point,
        method=method_for(measure, Method(row["method"] or Method.CALLIPER.value)),
        surface=Surface(row["surface"] or Surface.NOT_STATED.value),
        gauge=row["gauge"],
        block_checked={"yes": True, "no": False}.get(row["block"]),
    )


def _pairs(text: str, sign: str) -> Iterator[tuple[str, str]]:
    for part in filter(None, (one.strip() for one in text.split(";"))):
        key, _, value = part.rpartition(sign) if sign == " " else part.partition(sign)
        yield key.strip(), value.strip()


def use(sample: Sample, row: Row) -> NewUse:
    """A row of uses.csv."""
    return NewUse(sample.day(row["day"]), int(row["pulls"]), Event(row["event"] or "none"), row["by"], row["note"])


def exposure(sample: Sample, row: Row) -> NewExposure:
    """A row of exposures.csv."""
    rinsed = {"yes": True, "no": False}.get(row["rinsed"])
    days = int(row["days"] or 1)
    return NewExposure(sample.day(row["day"]), Weather(row["weather"]), days, rinsed, row["by"], row["note"])


def tags(row: Row) -> list[str]:
    """The tags of a row of loans.csv or counts.csv."""
    return [one.strip() for one in row["tags"].split(";")]


def went_through(sample: Sample, row: Row) -> WentThrough:
    """What was told of a loan that came back: nothing of what stands in an empty cell."""
    back = sample.day(row["back"])
    bore = tuple(NewUse(back, count) for count in [int(row["pulls"] or 0)] if count)
    told = [one.split(" ", 2) for one in row["weather"].split("; ") if one not in {"", "none"}]
    met = tuple(_met(back, weather, int(days), *rinsed) for weather, days, *rinsed in told)
    return WentThrough(bore if row["pulls"] else None, met if row["weather"] else None)


def _met(back: date, weather: str, days: int, rinsed: str = "") -> NewExposure:
    """Days of a weather, the last of them the day of the return."""
    first = back - timedelta(days=days - 1)
    return NewExposure(first, Weather(weather), days, {"rinsed": True, "not rinsed": False}.get(rinsed))


def seen(row: Row, kind: Kind) -> Seen:
    """A row of checks.csv: what is asked before use, answered as in inspections.csv."""
    asked = {one.key for one in asked_checks(kind)}
    answers = tuple(one for one in _answers(row["grades"], kind) if one.check in asked)
    return Seen(answers, tuple(_measured(kind, *one) for one in _pairs(row["readings"], "=")), row["note"])


def _measured(kind: Kind, key: str, typed: str) -> Reading:
    measure = kind.measure(key)
    assert measure is not None
    return Reading(key, read(typed, measure.dimension, field=key), method=method_for(measure, Method.CALLIPER))


def debrief(sample: Sample, name: str) -> tuple[date, str]:
    """A debrief: its day, and its text in the form of exchange, with days where the sample counts from today."""
    told = sample.tables(name)
    for table in (told, *listed_tables(told, "used")):
        table["on"] = sample.day(str(table["on"]))
    on = told["on"]
    assert isinstance(on, date)
    return on, tomli_w.dumps(told)

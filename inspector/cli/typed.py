"""What is typed after a command, read into gear words."""

from collections.abc import Mapping, Sequence
from datetime import date

import click
from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.duties.plausible import Caution, reading_name
from inspector.duties.typed_day import read_day
from inspector.gear.inspection import (
    Answer,
    InspectionKind,
    Method,
    NewInspection,
    Reading,
    Surface,
    method_for,
)
from inspector.gear.item import SizeAsNew
from inspector.gear.kind import Grade, Kind, Measure
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension, System, read

READ_AGAIN = click.option(
    "--read-again",
    "again",
    is_flag=True,
    help="What is out of the ordinary was looked at and read again, and it is so.",
)
_OF_A_WALL = (Method.ULTRASONIC_BARE, Method.ULTRASONIC_PAINT, Method.CALLIPER)


def day(text: str, otherwise: date) -> date:
    """A day typed as 2026-11-25 or 25 Nov 2026; `otherwise` where nothing was typed."""
    return read_day(text, tr("day")) if text.strip() else otherwise


def system(word: str) -> System:
    """The system of units that figures are printed in."""
    return System(word)


def pair(text: str, field: str) -> tuple[str, str]:
    """ "name=value" in two."""
    name, sign, value = text.partition("=")
    if not sign or not name.strip() or not value.strip():
        raise Refused(field, tr("“{text}” has no “=”.", text=text), tr("Write name=value."))
    return name.strip(), value.strip()


def second_look(odd: Sequence[Caution], *, again: bool) -> None:
    """Refuse what is out of the ordinary, each with its reason, until it is said that it was read again."""
    if not odd or again:
        return
    why = " ".join(f"{one.name} {one.typed}: {one.why}" for one in odd)
    what = tr("Read it again; where it is so, say --read-again. Nothing was kept.")
    raise Refused(tr("out of the ordinary"), why, what)


def sizes(office: Office, kind: Kind, typed: Sequence[str]) -> tuple[SizeAsNew, ...]:
    """Sizes as new, "bow_diameter=19 mm"."""
    dimensions = {size.key: size.dimension for size in kind.sizes}
    found = []
    for text in typed:
        key, value = pair(text, tr("size"))
        dimension = dimensions.get(key, Dimension.LENGTH)
        found.append(SizeAsNew(key, read(value, dimension, field=key, decimal=office.decimal)))
    return tuple(found)


class Typed(Struct, frozen=True):
    """An inspection as typed: grades "check=bad", readings "measure@point=2.9 mm"."""

    grades: Sequence[str]
    readings: Sequence[str]
    all_good: bool
    method: str | None
    surface: str
    gauge: str
    on: str
    kind: str
    by: str
    note: str
    second: str = ""
    next_within: int | None = None
    block_checked: bool | None = None


def inspection(office: Office, kind: Kind, typed: Typed) -> NewInspection:
    """The inspection that was typed."""
    return NewInspection(
        on=day(typed.on, office.today),
        kind=InspectionKind(typed.kind),
        by=typed.by or office.officer.id,
        competent=False,
        answers=_answers(kind, typed),
        readings=tuple(_reading(office, kind, typed, text) for text in typed.readings),
        note=typed.note,
        second=typed.second,
        next_within_days=typed.next_within,
    )


def _answers(kind: Kind, typed: Typed) -> tuple[Answer, ...]:
    return answers({check.key: Grade.GOOD for check in kind.checks} if typed.all_good else {}, typed.grades)


def answers(otherwise: Mapping[str, Grade], typed: Sequence[str]) -> tuple[Answer, ...]:
    """Answers, "check=bad"; otherwise: the grades of the checks that are not typed."""
    given = dict(otherwise)
    for text in typed:
        key, grade = pair(text, tr("grade"))
        try:
            given[key] = Grade(grade)
        except ValueError as error:
            why = tr("“{grade}” is no grade.", grade=grade)
            raise Refused(key, why, tr("Use good, slight, bad or not_seen.")) from error
    return tuple(Answer(key, grade) for key, grade in given.items())


def _reading(office: Office, kind: Kind, typed: Typed, text: str) -> Reading:
    found, measure = _figure(office, kind, text)
    method = _method(measure, typed) if measure else found.method
    return replace(
        found, method=method, surface=Surface(typed.surface), gauge=typed.gauge, block_checked=typed.block_checked
    )


def readings(office: Office, kind: Kind, typed: Sequence[str]) -> tuple[Reading, ...]:
    """Readings of a check before use, "bow_diameter=18.8 mm", taken with what is at hand."""
    found = (_figure(office, kind, text) for text in typed)
    return tuple(replace(one, method=method_for(of, one.method)) if of else one for one, of in found)


def _figure(office: Office, kind: Kind, text: str) -> tuple[Reading, Measure | None]:
    """The reading as such, and its measure; one that the kind lacks is refused later, with those it has."""
    place, value = pair(text, tr("reading"))
    key, _, point = place.partition("@")
    measure = kind.measure(key)
    dimension = measure.dimension if measure else Dimension.LENGTH
    figure = read(value, dimension, field=reading_name(measure, point) if measure else key, decimal=office.decimal)
    return Reading(key, figure, point), measure


def _method(measure: Measure, typed: Typed) -> Method:
    """How it was taken. Nobody guesses it for a wall: what a reading is worth hangs on it."""
    if typed.method is None and measure.key == "wall":
        why = tr("How the wall was read was not said.")
        ways = ", ".join(one.value for one in _OF_A_WALL)
        raise Refused(measure.name, why, tr("Say --method ultrasonic_bare, or another of: {ways}.", ways=ways))
    return method_for(measure, Method(typed.method or Method.CALLIPER))

"""Tell where a strap is damaged and how far a pin is worn, as far as inspections and their notes know it."""

import re
from collections.abc import Iterator

from inspector.gear.damage import DamagePlace, DamageSort, PinWear, StrapDamage, StrapMark
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, Reading
from inspector.gear.kind import Grade
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension, Figure, read

_SORTS = {
    "edge_cuts": DamageSort.CUT,
    "abrasion": DamageSort.RUB,
    "melted_hard": DamageSort.HEAT,
    "stitching": DamageSort.SEAM,
    "strap_eyes": DamageSort.EYE,
    "chemical_marks": DamageSort.STAIN,
    "fading": DamageSort.PALE,
    "grit": DamageSort.GRIT,
    "knots": DamageSort.KNOT,
}
_BY_NATURE = {"strap_eyes": DamagePlace.EYES, "stitching": DamagePlace.SEAMS}
_COUNTS = (
    ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"],
    ["einen", "zwei", "drei", "vier", "fünf", "sechs", "sieben", "acht", "neun", "zehn", "elf", "zwölf"],
)  # people write notes in words, in either language, whatever language the window speaks
_NUMBERS = {word: number for words in _COUNTS for number, word in enumerate(words, 1)}
_UNITS = {"metres": "m", "metre": "m", "meters": "m", "meter": "m", "m": "m", "cm": "cm", "ft": "ft", "feet": "ft",
          "foot": "ft", "inches": "in", "inch": "in", "in": "in"}  # fmt: skip
_FROM = re.compile(
    rf"(?P<number>\d+(?:[.,]\d+)?|{'|'.join(_NUMBERS)})\s*(?P<unit>{'|'.join(_UNITS)})\s+(?:from|vom|von)\b", re.I
)
_MIDDLE = re.compile(r"\b(in the middle|in der mitte)\b", re.I)


def strap_damage(dossier: Dossier) -> StrapDamage | None:
    """What stands against a strap: the last fault of each check that no competent person found good since.

    None for what is no strap, and where nothing was seen. A distance counts as one from an end of the strap only where
    the note of that very answer says so, or that of an inspection which found no other fault.
    """
    if dossier.kind.family != "strap":
        return None
    length = _length(dossier)
    length_m = length.si if length else None
    marks = tuple(_mark(dossier, seen, answer, length_m) for seen, answer in _standing(dossier))
    return StrapDamage(length_m, length.as_typed if length else "", marks) if marks else None


def _standing(dossier: Dossier) -> Iterator[tuple[Inspection, Answer]]:
    found: dict[str, tuple[Inspection, Answer]] = {}
    for seen in dossier.inspections:
        for answer in seen.facts.answers:
            if answer.grade in {Grade.SLIGHT, Grade.BAD}:
                found[answer.check] = (seen, answer)
            elif answer.grade is Grade.GOOD and seen.facts.competent:
                found.pop(answer.check, None)
    worst_first = sorted(found.values(), key=lambda one: (one[1].grade is not Grade.BAD, -one[0].on.toordinal()))
    yield from worst_first


def _length(dossier: Dossier) -> Figure | None:
    """As measured last, else as it was new."""
    readings = [one for seen in dossier.inspections for one in seen.facts.readings if one.measure == "length"]
    return readings[-1].figure if readings else dossier.item.size("length")


def _mark(dossier: Dossier, seen: Inspection, answer: Answer, length_m: float | None) -> StrapMark:
    check = dossier.kind.check(answer.check)
    faults = [one for one in seen.facts.answers if one.grade in {Grade.SLIGHT, Grade.BAD}]
    told = answer.note or (seen.facts.note if len(faults) == 1 else "")
    place, from_end_m = _place(told, answer.check, length_m)
    return StrapMark(
        sort=_SORTS.get(answer.check, DamageSort.OTHER),
        name=check.name if check else answer.check,
        grade=tr("bad") if answer.grade is Grade.BAD else tr("slight"),
        place=place,
        note=answer.note or seen.facts.note,
        on=seen.on,
        from_end_m=from_end_m,
    )


def _place(told: str, check: str, length_m: float | None) -> tuple[DamagePlace, float | None]:
    """Where the words put it; never a place that nobody wrote."""
    if check in _BY_NATURE:
        return _BY_NATURE[check], None
    from_end_m = _distance(told)
    if from_end_m is not None and length_m and 0 <= from_end_m <= length_m:
        return DamagePlace.MEASURED, from_end_m
    return (DamagePlace.MIDDLE if _MIDDLE.search(told) else DamagePlace.UNKNOWN), None


def _distance(told: str) -> float | None:
    """The one distance from something that a note names, in metres; None for none, and for several."""
    found = _FROM.findall(told)
    if len(found) != 1:
        return None
    number, unit = found[0]
    figure = str(_NUMBERS.get(number.lower(), number)).replace(",", ".")
    try:
        return read(f"{figure} {_UNITS[unit.lower()]}", Dimension.LENGTH, field=tr("note")).si
    except Refused:
        return None


def pin_wear(dossier: Dossier) -> PinWear | None:
    """The diameter of a pin as new and at its thinnest; None for what is no pin."""
    if dossier.kind.family != "pin":
        return None
    new = dossier.item.size("pin_diameter")
    thinnest = min(_pin_readings(dossier), key=lambda one: one[1].figure.si, default=None)
    return PinWear(
        new_m=new.si if new else None,
        new_typed=new.as_typed if new else "",
        thinnest_m=thinnest[1].figure.si if thinnest else None,
        as_typed=thinnest[1].figure.as_typed if thinnest else "",
        read_on=thinnest[0].on if thinnest else None,
    )


def _pin_readings(dossier: Dossier) -> Iterator[tuple[Inspection, Reading]]:
    for seen in dossier.inspections:
        for one in seen.facts.readings:
            if one.measure == "pin_diameter":
                yield seen, one

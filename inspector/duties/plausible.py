"""What in an inspection is out of the ordinary before it is kept: a caution to read again by, never a refusal.

A caution names one reading, or the day. Whoever keeps it all the same says that it was read again, and the inspection's
note tells so: a second look is never silent. What cannot be is refused elsewhere (`record_inspection`).
"""

import math
from collections.abc import Iterator, Sequence
from datetime import date
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.last_time import readings_at
from inspector.duties.office import Office
from inspector.duties.slips import slip_of
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection, Method, NewInspection, Reading
from inspector.gear.kind import Kind, Measure, kind_word
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from inspector.rulebook.unlikely import least_m
from inspector.units import DAYS_PER_YEAR, Dimension, Figure, System, show

DAY = "on"  # the measure of a caution about the day
_MUCH_FASTER = 2.0  # times the fastest that was known before
_HAIR = 1e-9


class Caution(Struct, frozen=True):
    """One thing to look at again. measure: its key, or DAY; point: its named place; typed: as it was typed."""

    measure: str
    point: str
    name: str
    typed: str
    why: str


def cautions(
    office: Office, dossier: Dossier, facts: NewInspection, widest_hole: Figure | None = None
) -> tuple[Caution, ...]:
    """What is out of the ordinary, at most one caution a reading, where all is known that `widest_hole` looks up."""
    look = _Look(office.rules, office.system, dossier, facts, widest_hole)
    found = [look.at_day(), *(look.at(one) for one in facts.readings)]
    return tuple(one for one in found if one)


def cautions_of(office: Office, dossier: Dossier, facts: NewInspection) -> tuple[Caution, ...]:
    """The same, whatever other pieces say of this one looked up as well."""
    thickest_m = max((one.figure.si for one in facts.readings), default=0.0)
    return cautions(office, dossier, facts, widest_hole(office, dossier, thickest_m * (1 + _HAIR)))


def widest_hole(office: Office, dossier: Dossier, enough_m: float = math.inf) -> Figure | None:
    """For a hitch pin, the widest pin hole as new among the club's tubes; None for other kinds or where none is.

    enough_m: the first hole found that is so wide will do, so that a pin which goes through is not held against every
    tube.
    """
    if dossier.kind.family != "pin":
        return None
    kinds = [one.key for one in office.rules.kinds.values() if one.measure("pin_hole")]
    widest: Figure | None = None
    with office.book.reading() as page:
        for tube in page.of_kinds(kinds):
            hole = tube.size("pin_hole")
            widest = hole if hole and (widest is None or hole.si > widest.si) else widest
            if widest and widest.si >= enough_m:
                break
    return widest


def with_confirmed(facts: NewInspection, found: Sequence[Caution], confirmed: Sequence[Caution]) -> NewInspection:
    """The inspection, its note telling what was read again. Refused where something was not."""
    return replace(facts, note=note_with(facts.note, found, confirmed))


def note_with(note: str, found: Sequence[Caution], confirmed: Sequence[Caution]) -> str:
    """A note that tells besides what was read again. Refused where something was not."""
    for one in found:
        if one not in confirmed:
            raise Refused(one.name, one.why, tr("Read it again; where it is so, say that you did."))
    told = [confirmed_words(one) for one in found]
    return "\n".join(part for part in (note, *told) if part)


def confirmed_words(one: Caution) -> str:
    """What the note says of a caution that somebody looked at again."""
    if one.measure == DAY:
        return tr("Looked at again and confirmed: the day, {day}.", day=one.typed)
    return tr("Read again and confirmed: {name} {typed}.", name=one.name, typed=one.typed)


def reading_name(measure: Measure, point: str) -> str:
    """What a reading is called: its measure, and its place where it has one."""
    return tr("{measure}, {point}", measure=measure.name, point=kind_word(point)) if point else measure.name


class _Look(Struct, frozen=True):
    """One look over an inspection."""

    rules: Rulebook
    system: System
    dossier: Dossier
    facts: NewInspection
    widest_hole: Figure | None

    def at_day(self) -> Caution | None:
        """What is odd about the day."""
        last = max((one.on for one in self.dossier.inspections), default=None)
        if last is None or self.facts.on >= last:
            return None
        why = tr("The last inspection was on {day}; this one would lie before it.", day=show_day(last))
        return Caution(DAY, "", tr("inspected on"), show_day(self.facts.on), why)

    def at(self, reading: Reading) -> Caution | None:
        """What is odd about a reading."""
        measure = self.dossier.kind.measure(reading.measure)
        if measure is None or measure.dimension is not Dimension.LENGTH or reading.figure.si < 0:
            return None  # what lies below nothing is refused, and nobody is asked whether it is so
        why = next(self._doubts(reading), "")
        name = reading_name(measure, reading.point)
        return Caution(reading.measure, reading.point, name, reading.figure.as_typed, why) if why else None

    def _doubts(self, reading: Reading) -> Iterator[str]:
        """Why a reading may be wrong, the plainest reason first."""
        before = self._before(reading)
        new = self._new(reading.measure)
        last = before[-1][1].figure if before else None
        if (expected := last or new) and (slip := slip_of(reading.figure, expected, self.system)):
            yield slip
        if new and (way := _way(self.rules, self.dossier.kind, reading.measure)):
            yield from self._against_new(reading, new, way)
        if self.widest_hole and reading.figure.si > self.widest_hole.si * (1 + _HAIR):
            yield tr("The pin would be thicker than the widest pin hole in the register ({hole}).",
                     hole=self.widest_hole.as_typed)  # fmt: skip
        if before and (way := _way(self.rules, self.dossier.kind, reading.measure)) and _is_metal(self.dossier.kind):
            yield from self._against_last(reading, before, way)
            yield from self._too_fast(reading, before, way)

    def _against_new(self, reading: Reading, new: Figure, way: int) -> Iterator[str]:
        if not _is_metal(self.dossier.kind):
            yield from self._much_shorter(reading, new)
            return
        if way * (reading.figure.si - new.si) > self._error_m(reading) + _HAIR * new.si:
            says = (
                tr("It was {new} as new, and nothing makes it thicker than that.")
                if way > 0
                else tr("It was {new} as new, and nothing makes it narrower than that.")
            )
            yield says.format(new=new.as_typed)

    def _much_shorter(self, reading: Reading, new: Figure) -> Iterator[str]:
        if reading.figure.si < least_m(self.rules, self.dossier.kind, reading.measure, new.si):
            yield tr(
                "It was {new} as new; webbing and rope draw in a little, but not so much. Was it cut or knotted, or is "
                "it another piece?",
                new=new.as_typed,
            )

    def _against_last(self, reading: Reading, before: Sequence[tuple[Inspection, Reading]], way: int) -> Iterator[str]:
        seen, last = before[-1]
        if way * (reading.figure.si - last.figure.si) > self._both_m(reading, last):
            says = (
                tr("It was {last} on {day}; steel does not grow back.")
                if way > 0
                else tr("It was {last} on {day}; a worn hole does not grow narrower again.")
            )
            yield says.format(last=last.figure.as_typed, day=show_day(seen.on))

    def _too_fast(self, reading: Reading, before: Sequence[tuple[Inspection, Reading]], way: int) -> Iterator[str]:
        seen, last = before[-1]
        lost = way * (last.figure.si - reading.figure.si)
        known = self._fastest_before(before, way)
        if known is None or lost <= self._both_m(reading, last):
            return
        if lost > _MUCH_FASTER * known * _years(seen.on, self.facts.on):
            change = show(lost, Dimension.LENGTH, self.system)
            yield tr(
                "It was {last} on {day}; a change of {change} since then is much faster than before.",
                last=last.figure.as_typed,
                day=show_day(seen.on),
                change=change,
            )

    def _fastest_before(self, before: Sequence[tuple[Inspection, Reading]], way: int) -> float | None:
        """Metres a year, the fastest between any two readings there; of a wall read once, the worst rate in print."""
        pairs = [
            way * (one.figure.si - two.figure.si) / _years(seen.on, then.on)
            for (seen, one), (then, two) in pairwise(before)
            if then.on > seen.on
        ]
        if pairs:
            return max(*pairs, 0.0)
        return self.rules.setting("wall_rate_worst") if before[-1][1].measure == "wall" else None

    def _before(self, reading: Reading) -> tuple[tuple[Inspection, Reading], ...]:
        found = readings_at(self.dossier, reading.measure, reading.point)
        return tuple(pair for pair in found if pair[0].on <= self.facts.on)

    def _new(self, key: str) -> Figure | None:
        measure = self.dossier.kind.measure(key)
        return self.dossier.item.size(measure.compare_with) if measure and measure.compare_with else None

    def _error_m(self, reading: Reading) -> float:
        """How far what it was taken with may be out, in metres."""
        setting = {
            Method.ULTRASONIC_BARE: "gauge_accuracy",
            Method.ULTRASONIC_PAINT: "gauge_accuracy_paint",
        }
        return self.rules.setting(setting.get(reading.method, "calliper_accuracy"))

    def _both_m(self, one: Reading, two: Reading) -> float:
        """How far the difference of two readings may be out: independent errors, square root of the squares."""
        return math.hypot(self._error_m(one), self._error_m(two))


def _years(start: date, end: date) -> float:
    return max((end - start).days, 1) / DAYS_PER_YEAR


def _way(rules: Rulebook, kind: Kind, measure: str) -> int:
    """1: it can only grow thinner with the years; -1: only wider; 0: the rules do not say."""
    if measure == "wall":
        return 1
    asked = {rule.quantity for rule in rules.rules_for(kind)}
    shrinks, opens = f"loss.{measure}" in asked, f"growth.{measure}" in asked
    return int(shrinks) - int(opens)


def _is_metal(kind: Kind) -> bool:
    """Webbing and rope stretch and draw in again when wet; metal goes one way."""
    return any(word in kind.material for word in ("steel", "aluminium"))

"""A case: one dossier beside the rulebook, with what several quantities need worked out once."""

from collections.abc import Callable
from datetime import date, timedelta
from functools import cached_property
from typing import TypeVar

from msgspec import Struct

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection, InspectionKind
from inspector.gear.item import BOLT_COUNT
from inspector.gear.kind import Grade, Service, kind_word
from inspector.gear.outcome import Purpose
from inspector.gear.use import Event, Exposure, NewUse, Weather
from inspector.rulebook.load import Rulebook

_SEVERE = {Weather.SALT, Weather.MUD}
_SPECIAL = {Weather.HEAT, Weather.CHEMICAL}
_LOOKS_BACK_DAYS = 365
_NOT_YET = object()

Made = TypeVar("Made")


class LookedOver(Struct, frozen=True):
    """at: of the inspections in which each part was last seen, the earliest; None where a part was never seen.

    missing: the names of those parts.
    """

    at: Inspection | None
    missing: tuple[str, ...]


class Case:
    """A dossier to be judged by a rulebook. Nothing here changes with time alone except `dossier.on` itself."""

    def __init__(self, dossier: Dossier, book: Rulebook) -> None:
        self.dossier = dossier
        self.book = book
        self._worked_out: dict[object, object] = {}
        self._graded: list[dict[str, list[Grade]]] = []

    def once(self, name: object, work_out: Callable[["Case"], Made]) -> Made:
        """Work something out once for this case, whoever asks first."""
        found = self._worked_out.get(name, _NOT_YET)
        if found is _NOT_YET:
            found = self._worked_out[name] = work_out(self)
        return found  # type: ignore[return-value]

    @cached_property
    def on(self) -> date:
        """The judging day."""
        return self.dossier.on

    @cached_property
    def purposes(self) -> tuple[Purpose, ...]:
        """What the piece is kept for, among what its kind may serve at all."""
        return purposes_of(self.dossier)

    @cached_property
    def thorough(self) -> tuple[Inspection, ...]:
        """Inspections that can pass a piece: by a competent person, periodic or after an event."""
        return tuple(
            one
            for one in self.dossier.inspections
            if one.facts.competent and one.facts.kind is not InspectionKind.BEFORE_USE
        )

    def is_thorough(self, inspection: Inspection) -> bool:
        """Whether this inspection of the dossier can pass the piece."""
        return id(inspection) in self._thorough

    @cached_property
    def _thorough(self) -> frozenset[int]:
        return frozenset(id(one) for one in self.thorough)

    def graded(self, check: str) -> list[tuple[Inspection, Grade]]:
        """What counts of a check's grades: the last one a competent person gave, and whatever was seen since.

        Where no competent person has answered, only the faults that others saw, and what was seen since the first.
        """
        given: list[tuple[Inspection, Grade]] = []  # the newest first
        for place, one in enumerate(reversed(self.dossier.inspections)):
            grades = self._grades_of(place, one).get(check)
            if grades is None:
                continue
            given += [(one, grade) for grade in reversed(grades)]
            if self.is_thorough(one):
                return given[::-1]
        while given and given[-1][1] is Grade.GOOD:
            given.pop()
        return given[::-1]

    def _grades_of(self, place: int, inspection: Inspection) -> dict[str, list[Grade]]:
        """What an inspection saw, by check; asked of the last few alone, however long the life. place: from the end."""
        if place < len(self._graded):
            return self._graded[place]
        found: dict[str, list[Grade]] = {}
        for answer in inspection.facts.answers:
            if answer.grade is not Grade.NOT_SEEN:
                found.setdefault(answer.check, []).append(answer.grade)
        self._graded.append(found)
        return found

    @cached_property
    def looked_over(self) -> LookedOver:
        """When a competent person has last seen all of the piece: every check and every point that must be measured.

        Parts may be seen on several days; the part that was seen longest ago tells the day.
        """
        wanted = [(check.key, "", check.name) for check in self.dossier.kind.checks]
        wanted += [
            (measure.key, point, f"{measure.name} {kind_word(point)}".strip())
            for measure in self.dossier.kind.measures
            if measure.required and not (measure.compare_with == BOLT_COUNT and self.dossier.item.is_welded_on)
            for point in measure.points or ("",)
        ]
        open_parts = {(key, point) for key, point, _ in wanted}
        latest: dict[tuple[str, str], Inspection] = {}
        for one in reversed(self.thorough):
            if not open_parts:
                break
            seen = {(answer.check, "") for answer in one.facts.answers if answer.grade is not Grade.NOT_SEEN}
            seen |= {(reading.measure, reading.point) for reading in one.facts.readings}
            latest |= dict.fromkeys(seen & open_parts, one)
            open_parts -= seen
        missing = tuple(name for key, point, name in wanted if (key, point) not in latest)
        if missing:
            return LookedOver(None, missing)
        seen_in = {one.id: one for one in latest.values()}.values()
        return LookedOver(min(seen_in, key=lambda one: (one.on, one.id)), ())

    @cached_property
    def service(self) -> Service:
        """Special after an event, heat or chemicals; severe after salt or mud, or with a past that nobody knows.

        Each since a year before it was last looked over: counted from that day and not from today, so that waiting
        never makes the service milder.
        """
        last = self.looked_over.at
        since = last.on - timedelta(days=_LOOKS_BACK_DAYS) if last else date.min
        weathers = {one.facts.weather for one in self.dossier.exposures if last_day(one) >= since}
        if any(one.facts.on >= since for one in self.dossier.untold):
            weathers |= _SEVERE
        if weathers & _SPECIAL or any(one.on >= since for one in self.events):
            return Service.SPECIAL
        if weathers & _SEVERE or (self.past_unknown and last is None):
            return Service.SEVERE
        return Service.NORMAL

    @cached_property
    def events(self) -> tuple[NewUse, ...]:
        """Uses in which something happened beyond an ordinary pull."""
        return tuple(one.facts for one in self.dossier.uses if one.facts.event is not Event.NONE)

    @cached_property
    def interval_days(self) -> int:
        """Days between thorough inspections in this service; who inspected it since may have asked for fewer."""
        kind = self.dossier.kind
        by_service = {
            Service.NORMAL: kind.every_days,
            Service.SEVERE: kind.every_days_severe,
            Service.SPECIAL: kind.every_days_special,
        }[self.service]
        return by_service if self._asked_days is None else min(self._asked_days, by_service)

    @cached_property
    def good_for(self) -> timedelta:
        """How long after the day it was seen a good grade or a reading goes stale."""
        return timedelta(days=self.interval_days + 1)

    @cached_property
    def _asked_days(self) -> int | None:
        """The shortest time that anybody asked for since the piece was last looked over."""
        last = self.looked_over.at
        asked = [one.facts.next_within_days for one in self.thorough if last is None or one.on >= last.on]
        return min((days for days in asked if days is not None), default=None)

    @property
    def sooner(self) -> bool:
        """Whether an inspector asked for a shorter time than the service does."""
        return self._asked_days is not None and self._asked_days == self.interval_days

    @cached_property
    def salt(self) -> tuple[tuple[str, date], ...]:
        """The entries by which salt reached it, or may have reached it unseen on a loan of which nobody told the
        weather: id, and the first day."""
        logged = [(one.id, one.facts.on) for one in self.dossier.exposures if one.facts.weather is Weather.SALT]
        return (*logged, *((one.id, one.facts.since or one.facts.on) for one in self.dossier.untold))

    @cached_property
    def first_salt_on(self) -> date | None:
        """The first day in salt water, or None."""
        return min((day for _, day in self.salt), default=None)

    @property
    def wetted(self) -> bool:
        """Whether salt water may have stood inside: it was logged, or nobody can rule it out."""
        return self.first_salt_on is not None or self.past_unknown

    @property
    def past_unknown(self) -> bool:
        """Whether the piece lived before the register without anybody who can tell."""
        return not self.dossier.item.facts.provenance.is_new


def purposes_of(dossier: Dossier) -> tuple[Purpose, ...]:
    """What the piece is kept for, among what its kind may serve at all; the kind's own where nobody chose."""
    may = tuple(purpose for purpose in dossier.kind.purposes if dossier.kind.may(purpose))
    kept = tuple(purpose for purpose in may if purpose in dossier.item.facts.kept_for)
    return kept or may


def last_day(exposure: Exposure) -> date:
    """The last day of an exposure that ran over several."""
    return exposure.facts.on + timedelta(days=max(exposure.facts.days_count - 1, 0))

"""A case: one dossier beside the rulebook, with what several quantities need worked out once."""

from collections.abc import Callable, Iterable, Sequence
from datetime import date, timedelta
from functools import cached_property
from typing import TypeVar

from msgspec import Struct

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection
from inspector.gear.item import BOLT_COUNT
from inspector.gear.kind import Grade, Kind, Service, kind_word
from inspector.gear.outcome import Purpose
from inspector.gear.use import Event, Exposure, Weather
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
    """A dossier to be judged by a rulebook. Nothing here changes with time alone except `dossier.on` itself.

    on: the judging day. purposes: what the piece is kept for, among what its kind may serve at all. thorough: the
    inspections that can pass it. looked_over: when a competent person has last seen all of it. service: how hard a life
    it leads. interval_days: between thorough inspections in that service, or fewer where who inspected it since asked
    for fewer; good_for: how long after the day it was seen a good grade or a reading goes stale.
    """

    def __init__(self, dossier: Dossier, book: Rulebook) -> None:
        self.dossier = dossier
        self.book = book
        self.on = dossier.on
        self.purposes = purposes_of(dossier)
        self.thorough = tuple([one for one in dossier.inspections if one.is_thorough])
        self.looked_over = self._looked_over()
        self.service = self._service()
        self._asked_days = self._shortest_asked()
        by_service = _every_days(dossier.kind, self.service)
        self.interval_days = by_service if self._asked_days is None else min(self._asked_days, by_service)
        self.good_for = timedelta(days=self.interval_days + 1)
        self._worked_out: dict[object, object] = {}

    def once(self, name: object, work_out: Callable[["Case"], Made]) -> Made:
        """Work something out once for this case, whoever asks first."""
        found = self._worked_out.get(name, _NOT_YET)
        if found is _NOT_YET:
            found = self._worked_out[name] = work_out(self)
        return found  # type: ignore[return-value]

    def graded(self, check: str) -> list[tuple[Inspection, Grade]]:
        """What counts of a check's grades: the last one a competent person gave, and whatever was seen since.

        Where no competent person has answered, only the faults that others saw, and what was seen since the first.
        """
        of_kind = self._graded
        return of_kind[check] if check in of_kind else self._what_counts({check})[check]

    @cached_property
    def _graded(self) -> dict[str, list[tuple[Inspection, Grade]]]:
        return self._what_counts({check.key for check in self.dossier.kind.checks})

    def _what_counts(self, checks: set[str]) -> dict[str, list[tuple[Inspection, Grade]]]:
        """The same of several checks by one look through the last few inspections, however long the life."""
        found: dict[str, list[tuple[Inspection, Grade]]] = {check: [] for check in checks}  # the newest first
        for one in reversed(self.dossier.inspections):
            if not checks:
                break
            answered = set()
            for answer in reversed(one.facts.answers):
                if answer.check in checks and answer.grade is not Grade.NOT_SEEN:
                    found[answer.check].append((one, answer.grade))
                    answered.add(answer.check)
            if one.is_thorough:
                checks = checks - answered
        for check in checks:
            while found[check] and found[check][-1][1] is Grade.GOOD:
                found[check].pop()
        return {check: given[::-1] for check, given in found.items()}

    def _looked_over(self) -> LookedOver:
        """When a competent person has last seen all of the piece: every check and every point that must be measured.

        Parts may be seen on several days; the part that was seen longest ago tells the day.
        """
        latest = self._last_seen(self.thorough)
        missing = tuple([name for part, name in self._parts.items() if part not in latest])
        if missing:
            return LookedOver(None, missing)
        seen_in = {one.id: one for one in latest.values()}.values()
        return LookedOver(min(seen_in, key=lambda one: (one.on, one.id)), ())

    def all_seen_in(self, inspections: Iterable[Inspection]) -> bool:
        """Whether these inspections alone have seen all of the piece."""
        return len(self._last_seen(tuple(inspections))) == len(self._parts)

    @cached_property
    def _parts(self) -> dict[tuple[str, str], str]:
        """What must be seen of it, each check and each point that is measured, and how it is called."""
        parts = {(check.key, ""): check.name for check in self.dossier.kind.checks}
        for measure in self.dossier.kind.measures:
            if measure.required and not (measure.compare_with == BOLT_COUNT and self.dossier.item.is_welded_on):
                points = measure.points or ("",)
                parts |= {(measure.key, point): f"{measure.name} {kind_word(point)}".strip() for point in points}
        return parts

    def _last_seen(self, inspections: Sequence[Inspection]) -> dict[tuple[str, str], Inspection]:
        """The latest of the inspections, given in order of day, that saw each part; a part none saw is left out."""
        open_parts = set(self._parts)
        latest: dict[tuple[str, str], Inspection] = {}
        for one in reversed(inspections):
            if not open_parts:
                break
            seen = {(answer.check, "") for answer in one.facts.answers if answer.grade is not Grade.NOT_SEEN}
            seen |= {(reading.measure, reading.point) for reading in one.facts.readings}
            latest |= dict.fromkeys(seen & open_parts, one)
            open_parts -= seen
        return latest

    def _service(self) -> Service:
        """Special after an event, heat or chemicals; severe after salt or mud, or with a past that nobody knows.

        Each since a year before it was last looked over: counted from that day and not from today, so that waiting
        never makes the service milder.
        """
        last = self.looked_over.at
        since = last.on - timedelta(days=_LOOKS_BACK_DAYS) if last else date.min
        weathers = {one.facts.weather for one in self.dossier.exposures if last_day(one) >= since}
        if any(one.facts.on >= since for one in self.dossier.untold):
            weathers |= _SEVERE
        if weathers & _SPECIAL or any(
            one.facts.on >= since for one in self.dossier.uses if one.facts.event is not Event.NONE
        ):
            return Service.SPECIAL
        if weathers & _SEVERE or (self.past_unknown and last is None):
            return Service.SEVERE
        return Service.NORMAL

    def _shortest_asked(self) -> int | None:
        """The shortest time that anybody asked for since the piece was last looked over."""
        since_on = self.looked_over.at.on if self.looked_over.at else date.min
        asked = [one.facts.next_within_days for one in self.thorough if one.facts.on >= since_on]
        return min([days for days in asked if days is not None], default=None)

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


def _every_days(kind: Kind, service: Service) -> int:
    if service is Service.NORMAL:
        return kind.every_days
    return kind.every_days_severe if service is Service.SEVERE else kind.every_days_special


def purposes_of(dossier: Dossier) -> tuple[Purpose, ...]:
    """What the piece is kept for, among what its kind may serve at all; the kind's own where nobody chose."""
    may, chosen = dossier.kind.served, dossier.item.facts.kept_for
    return tuple(purpose for purpose in may if purpose in chosen) or may


def last_day(exposure: Exposure) -> date:
    """The last day of an exposure that ran over several."""
    return exposure.facts.on + timedelta(days=max(exposure.facts.days_count - 1, 0))

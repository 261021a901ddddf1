"""How hard a life a piece leads, and how soon it is looked at again."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, InspectionKind, NewInspection, Reading
from inspector.gear.item import Item, NewItem, Provenance, Rating
from inspector.gear.kind import Basis, Grade, Service
from inspector.gear.use import Event, Exposure, NewExposure, NewUse, Use, Weather
from inspector.gear.verdict import Verdict
from inspector.rulebook.judge import judge
from inspector.rulebook.wording import explain
from inspector.units import Figure
from tests.each import each
from tests.rulebook.dossiers import BOOK, KINDS, TODAY

KIND = BOOK.kind("bow_shackle")


def strained(days_ago: int, event: Event) -> Use:
    return Use("u", "i", NewUse(TODAY - timedelta(days=days_ago), 1, event))


def exposed(days_ago: int, weather: Weather) -> Exposure:
    return Exposure("e", "i", NewExposure(TODAY - timedelta(days=days_ago), weather))


def piece(seen_days_ago: int = 0, provenance: Provenance = Provenance.NEW, next_within: int | None = None) -> Dossier:
    answers = tuple(Answer(check.key, Grade.GOOD) for check in KIND.checks)
    day = TODAY - timedelta(days=seen_days_ago)
    facts = NewInspection(day, InspectionKind.AFTER_EVENT, "p", competent=True, answers=answers)
    taken = tuple(
        Reading(measure.key, Figure(0.02, "20 mm", measure.dimension), point)
        for measure in KIND.measures
        for point in measure.points or ("",)
    )
    seen = Inspection("z", "i", replace(facts, readings=taken, next_within_days=next_within))
    facts_new = NewItem("T", KIND.key, Rating(Basis.UNRATED, None, None, "piece"), provenance=provenance)
    return Dossier(KIND, Item("i", TODAY - timedelta(days=2000), facts_new), TODAY, (seen,))


def judged(dossier: Dossier) -> Verdict:
    return judge(dossier, BOOK, "test")


@each(
    ("change", "service"),
    [
        ({}, Service.NORMAL),
        ({"exposures": (exposed(10, Weather.SUN),)}, Service.NORMAL),
        ({"exposures": (exposed(10, Weather.SALT),)}, Service.SEVERE),
        ({"exposures": (exposed(365, Weather.MUD),)}, Service.SEVERE),
        ({"exposures": (exposed(366, Weather.MUD),)}, Service.NORMAL),
        ({"exposures": (exposed(10, Weather.HEAT),)}, Service.SPECIAL),
        ({"exposures": (exposed(10, Weather.SALT), exposed(9, Weather.CHEMICAL))}, Service.SPECIAL),
        ({"uses": (strained(10, Event.NONE),)}, Service.NORMAL),
        ({"uses": (strained(10, Event.OVERLOAD),)}, Service.SPECIAL),
        ({"uses": (strained(365, Event.DROPPED),)}, Service.SPECIAL),
        ({"uses": (strained(366, Event.RAN_OVER),)}, Service.NORMAL),
    ],
)
def test_what_it_went_through_sets_the_service(change: dict[str, tuple[Use, ...]], service: Service) -> None:
    verdict = judged(replace(piece(), **change))
    assert verdict.service is service
    days = {Service.NORMAL: 365, Service.SEVERE: 90, Service.SPECIAL: 30}
    assert verdict.next_inspection_due == TODAY + timedelta(days=days[service])


def test_the_year_counts_from_the_inspection_and_not_from_today() -> None:
    old = replace(piece(300), exposures=(exposed(400, Weather.SALT),))
    assert judged(old).service is Service.SEVERE


def test_a_piece_of_unknown_past_is_in_severe_service_until_it_is_inspected() -> None:
    unknown = piece(provenance=Provenance.UNKNOWN)
    assert judged(replace(unknown, inspections=())).service is Service.SEVERE
    assert judged(unknown).service is Service.NORMAL


@pytest.mark.parametrize(("asked", "days"), [(None, 365), (400, 365), (365, 365), (60, 60), (1, 1)])
def test_an_inspector_may_ask_for_less_time_and_never_for_more(asked: int | None, days: int) -> None:
    verdict = judged(piece(next_within=asked))
    assert verdict.next_inspection_due == TODAY + timedelta(days=days)
    told = "asked for by the last inspector" in " ".join(
        reason.limit for reason in explain(piece(next_within=asked), verdict, BOOK).passes
    )
    assert told == (asked is not None and asked <= 365)


@each("kind", KINDS, ids=[kind.key for kind in KINDS])
def test_a_harder_life_never_means_more_time(kind: object) -> None:
    found = BOOK.kind(str(getattr(kind, "key", "")))
    assert 0 < found.every_days_special <= found.every_days_severe <= found.every_days

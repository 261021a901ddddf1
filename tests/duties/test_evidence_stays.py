"""No order of deeds lets evidence be destroyed, lent, fitted, taken off or used before two persons release it."""

from collections.abc import Callable
from contextlib import suppress
from datetime import timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.destroy_item import destroy_item
from inspector.duties.fit_parts import fit_part, take_off_part
from inspector.duties.give_opinion import doubt
from inspector.duties.judge_anew import judge_anew
from inspector.duties.keep_incident import add_custody, close_incident, hold_more
from inspector.duties.lend import lend, lend_kit
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.release_evidence import release_evidence
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.duties.work_rigs import pack_trip
from inspector.gear.fitting import End, Fitted
from inspector.gear.inspection import InspectionKind
from inspector.gear.outcome import Outcome
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.refused import Refused
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, STRAP_READINGS, all_good
from tests.duties.incidents import SECOND, beach, reported
from tests.duties.rigs import later

READINGS = {"SH-1": SHACKLE_READINGS, "SH-2": SHACKLE_READINGS, "KS-1": STRAP_READINGS, "RP-1": POINT_READINGS}
TAGS = tuple(READINGS)
OUT = "Di Member"


def looked_at(office: Office, tag: str, kind: InspectionKind, grade: str) -> object:
    """Inspected by the officer, its first check graded so."""
    of = open_item(office, tag).dossier.kind
    return record_inspection(
        office, tag, replace(all_good(office, of, READINGS[tag], None, "", **{of.checks[0].key: grade}), kind=kind)
    )


def struck(office: Office, tag: str) -> object:
    """The last inspection struck by two."""
    seen = open_item(office, tag).dossier.inspections
    last = seen[-1].id[-8:] if seen else "none left"
    return strike_entry(office, tag, last, SECOND, "the wrong tag")


Deed = Callable[[Office, str], object]
DEEDS: dict[str, Deed] = {
    "inspect": lambda office, tag: looked_at(office, tag, InspectionKind.PERIODIC, "good"),
    "inspect after the event": lambda office, tag: looked_at(office, tag, InspectionKind.AFTER_EVENT, "good"),
    "retire": lambda office, tag: looked_at(office, tag, InspectionKind.PERIODIC, "bad"),
    "check before use": lambda office, tag: looked_at(office, tag, InspectionKind.BEFORE_USE, "good"),
    "strike": struck,
    "destroy": lambda office, tag: destroy_item(office, tag, "cut in two"),
    "lend": lambda office, tag: lend(office, [tag], OUT, office.today + timedelta(days=2)),
    "lend the kit": lambda office, _: lend_kit(office, "T-1", OUT, office.today + timedelta(days=2)),
    "fit": lambda office, tag: fit_part(office, tag, Fitted("V-1", End.FRONT)),
    "take off": take_off_part,
    "use": lambda office, tag: record_use(office, tag, NewUse(office.today, 1, Event.DROPPED)),
    "expose": lambda office, tag: record_exposure(office, tag, NewExposure(office.today, Weather.SALT)),
    "doubt": lambda office, tag: doubt(office, tag, "it looks bent"),
    "judge anew": lambda office, _: judge_anew(office),
    "release alone": lambda office, tag: release_evidence(office, ref(office), tag, second="Ada Officer", why="x"),
    "release with a member": lambda office, tag: release_evidence(office, ref(office), tag, second=OUT, why="x"),
    "hold": lambda office, tag: hold_more(office, ref(office), tag, "again"),
    "hand over": lambda office, tag: add_custody(office, ref(office), tag, "Sgt Stern"),
    "close": lambda office, _: close_incident(office, ref(office), "done"),
}


def ref(office: Office) -> str:
    """The one incident."""
    with office.book.reading() as page:
        return page.incidents()[0].ref


class _TakenBackError(Exception):
    """Takes back all that one example did."""


ORDERS = st.lists(st.tuples(st.sampled_from(sorted(DEEDS)), st.sampled_from(TAGS), st.integers(0, 40)), max_size=14)


@settings(max_examples=14, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(deeds=ORDERS)
def test_evidence_stays_whatever_is_tried(office: Office, deeds: list[tuple[str, str, int]]) -> None:
    with pytest.raises(_TakenBackError), office.book.together():
        beach(office)
        reported(office)
        on = office
        for name, tag, days in deeds:
            on = later(on, days)
            with suppress(Refused), office.book.together():
                DEEDS[name](on, tag)
            _holds(on)
        assert verify_book(office).faults == ()
        raise _TakenBackError


def _holds(office: Office) -> None:
    """Each is still evidence, whole, where it was, and of no use."""
    with office.book.reading() as page:
        for tag in TAGS:
            item = page.item(tag)
            assert page.open_quarantines(item) == (page.incidents()[0].ref,)
            assert not page.is_destroyed(item) and page.out_entry(item) is None
            fitted = page.fitted(item)
            assert (fitted.vehicle if fitted else "") == ("V-2" if tag == "RP-1" else "")
            assert page.latest_verdict(item.id)[0].outcome in {Outcome.HOLD, Outcome.RETIRE}
        assert set(page.kept_vehicles()) == {"V-1", "V-2"}
    assert not {one.tag for one in pack_trip(office, "T-1").takes} & set(TAGS)


def test_every_one_of_these_deeds_can_be_done_with_a_piece_that_is_no_evidence(office: Office) -> None:
    """Or the property above would hold for deeds that are refused for another reason."""
    beach(office)
    fine = ("inspect", "lend", "use", "expose", "doubt", "judge anew", "check before use", "inspect after the event")
    for name in fine:
        DEEDS[name](office, "SH-1")
    DEEDS["take off"](office, "RP-1")
    DEEDS["fit"](office, "RP-1")
    DEEDS["retire"](office, "KS-1")
    DEEDS["strike"](office, "KS-1")
    DEEDS["retire"](office, "KS-1")
    DEEDS["destroy"](office, "KS-1")
    assert "made KS-1 unusable" in told_ledger(office, last=1)[0].sentence

"""Stories of the bad day: what is kept as found, who lets it go, and what nobody may do meanwhile."""

from collections.abc import Callable, Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.fit_parts import fit_part, take_off_part
from inspector.duties.give_back import give_back
from inspector.duties.keep_incident import add_custody, add_statement, close_incident, hold_more
from inspector.duties.keep_vehicles import change_vehicle
from inspector.duties.lend import lend
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.recall import batch_of, kin_of_broken
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.release_evidence import release_evidence, release_vehicle
from inspector.duties.retire_item import print_notice
from inspector.duties.tell_history import history_of
from inspector.duties.tell_incident import incident_told, incidents
from inspector.duties.trip_readiness import readiness
from inspector.duties.verify_book import verify_book
from inspector.duties.work_rigs import pack_trip, pair_trip, propose_rig, work_rig
from inspector.gear.custody import NOTHING_HAPPENED
from inspector.gear.fitting import End, Fitted
from inspector.gear.incident import Distance, Gravity
from inspector.gear.inspection import InspectionKind
from inspector.gear.outcome import Outcome
from inspector.gear.rig import Method
from inspector.gear.rig_result import RigOutcome, RigResult
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.refused import Refused
from inspector.register.rows import from_body
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, STRAP_READINGS, all_good, metres, point, shackle, strap
from tests.duties.incidents import SECOND, accident, reported
from tests.duties.rigs import SAND, SNATCH, fit, later
from tests.duties.test_opinions import add
from tests.fresh import copied

WHY = "The insurer and the police have what they need."


@pytest.fixture
def office(beach_once: Office, tmp_path: Path) -> Iterator[Office]:
    """A club with a beach rig and a second competent person."""
    made = copied(beach_once, tmp_path)
    yield made
    made.book.close()


def let_go(office: Office, ref: str, tag: str) -> Outcome:
    """Released by both; its verdict then."""
    return release_evidence(office, ref, tag, second=SECOND, why=WHY).verdict.outcome


def outcome(office: Office, tag: str) -> Outcome:
    """The standing verdict."""
    return open_item(office, tag).verdict.outcome


def looked_at(office: Office, tag: str, readings: dict[str, str], **bad: str) -> Outcome:
    """Inspected after the event; its verdict then."""
    kind = open_item(office, tag).dossier.kind
    seen = replace(all_good(office, kind, readings, None, "", **bad), kind=InspectionKind.AFTER_EVENT)
    return record_inspection(office, tag, seen).verdict.outcome


def test_an_accident_on_a_beach_from_report_to_release_of_one_piece_and_retirement_of_another(office: Office) -> None:
    before = verify_book(office).line_count
    made = reported(office)
    ref = made.incident.ref
    assert verify_book(office).line_count == before + 1
    assert {one.dossier.item.tag for one in made.pieces} == {"KS-1", "SH-1", "SH-2", "RP-1"}
    assert {one.verdict.outcome for one in made.pieces} == {Outcome.HOLD}
    assert set(made.incident.facts.vehicles) == {"V-1", "V-2"}
    add_statement(office, ref, "Ned Watcher", "I stood by the dune and saw the pin turn out.")
    add_custody(office, ref, "SH-2", "Sgt Stern", "sealed bag 0042")
    with pytest.raises(Refused, match="still kept"):
        close_incident(office, ref, "done")

    then = later(office, 30)
    assert looked_at(then, "SH-1", SHACKLE_READINGS) is Outcome.HOLD  # looking is allowed, and lifts nothing
    for tag in ("KS-1", "SH-1", "SH-2", "RP-1"):
        assert let_go(then, ref, tag) is Outcome.HOLD
    assert looked_at(then, "SH-1", SHACKLE_READINGS) is Outcome.FIT
    assert looked_at(then, "SH-2", SHACKLE_READINGS, cracks="bad") is Outcome.RETIRE
    assert print_notice(then, "SH-2").path.exists()
    for tag in ("V-1", "V-2"):
        release_vehicle(then, ref, tag, second=SECOND, why=WHY)
    close_incident(then, ref, "A pin had not been locked.")
    assert destroy_item(then, "SH-2", "bow cut through").how
    assert outcome(then, "KS-1") is Outcome.HOLD, "nobody has looked at it yet"
    assert verify_book(then).faults == ()
    rows = [row.what for row in history_of(then, "SH-1")]
    assert "Kept as evidence" in rows and "Released from evidence" in rows
    assert incidents(then)[0].state == "closed" and incidents(then)[0].kept == ""


def test_what_broke_is_freed_by_no_inspection_but_by_two_who_answer_the_break(office: Office) -> None:
    ref = reported(office).incident.ref
    then = later(office, 30)
    assert let_go(then, ref, "SH-2") is Outcome.HOLD
    assert looked_at(then, "SH-2", SHACKLE_READINGS) is Outcome.HOLD
    said = open_item(then, "SH-2").explanation
    assert "it broke or let go" in said.headline and "answer the break by name" in said.plain
    assert any(ref in one.value and "no inspection answers that" in one.why for one in said.reasons)
    with pytest.raises(Refused, match="cannot be both names"):
        release_evidence(then, ref, "SH-2", second=then.officer.name, why=WHY, whole=True)
    freed = release_evidence(then, ref, "SH-2", second=SECOND, why="Another shackle was meant.", whole=True)
    assert freed.verdict.outcome is Outcome.HOLD, "nobody has looked at it since"
    assert looked_at(later(office, 31), "SH-2", SHACKLE_READINGS) is Outcome.FIT
    assert any("its break is answered" in row.text for row in history_of(then, "SH-2"))


def test_a_break_is_answered_as_it_is_let_go_and_only_where_one_stands(office: Office) -> None:
    ref = reported(office).incident.ref
    then = later(office, 30)
    with pytest.raises(Refused, match="did not break"):
        release_evidence(then, ref, "SH-1", second=SECOND, why=WHY, whole=True)
    release_evidence(then, ref, "SH-2", second=SECOND, why="Another shackle was meant.", whole=True)
    assert looked_at(later(office, 31), "SH-2", SHACKLE_READINGS) is Outcome.FIT
    with pytest.raises(Refused, match="is not kept for"):
        release_evidence(then, ref, "SH-2", second=SECOND, why=WHY)
    other = reported(later(office, 40), rig=None, pieces=("SH-2",)).incident.ref
    assert let_go(later(office, 41), other, "SH-2") is Outcome.HOLD
    assert looked_at(later(office, 42), "SH-2", SHACKLE_READINGS) is Outcome.HOLD, "an answer speaks of one incident"


def test_the_rigs_sum_and_the_verdicts_are_those_before_the_report(office: Office) -> None:
    before = work_rig(office, replace(SNATCH, conditions=SAND))
    told = reported(office).incident.facts
    kept = from_body(told.rig_result, RigResult)
    assert (kept.load.pull_n, kept.weakest, kept.safety_factor) == (
        before.load.pull_n,
        before.weakest,
        before.safety_factor,
    )
    assert kept.outcome is before.outcome and told.rig_why_not == ""
    assert {one.outcome for one in told.stood} == {Outcome.FIT}
    with office.book.reading() as page:
        for one in told.stood:
            verdict, words = page.verdict_with(one.verdict_id)
            assert (verdict.outcome, words.headline) == (one.outcome, one.headline)
    after = work_rig(later(office, 1), replace(SNATCH, conditions=SAND)).link("SH-1")
    then = kept.link("SH-1")
    assert after is not None and then is not None
    assert (then.outcome, after.outcome) == (RigOutcome.SOUND, RigOutcome.UNSOUND)


def test_a_rig_whose_sum_cannot_be_made_is_kept_with_the_reason(office: Office) -> None:
    odd = replace(SNATCH, runs=(("SH-1", "SH-2"),))
    told = reported(office, rig=odd).incident.facts
    assert told.rig_result == "" and told.rig_why_not
    untold = reported(office, rig=None, pieces=("SH-1", "SH-2")).incident.facts
    assert untold.rig_result == "" and "Nobody wrote down" in untold.rig_why_not


def test_a_past_day_is_told_by_what_stood_then(office: Office) -> None:
    lend(office, ["SH-1"], "Di Member", office.today + timedelta(days=4))
    day = office.today
    give_back(later(office, 2), "SH-1", "Di Member", NOTHING_HAPPENED)
    then = later(office, 5)
    kind = open_item(then, "SH-1").dossier.kind
    record_inspection(then, "SH-1", all_good(then, kind, SHACKLE_READINGS, cracks="bad"))
    take_off_part(then, "RP-1")
    made = reported(then, on=day)
    stood = {one.tag: one for one in made.incident.facts.stood}
    assert (stood["SH-1"].outcome, outcome(then, "SH-1")) == (Outcome.FIT, Outcome.RETIRE)
    with then.book.reading() as page:
        names = {one.id: one.name for one in page.people()}
    assert names[stood["SH-1"].held_by] == "Di Member" and stood["SH-2"].held_by == ""
    assert "RP-1" in stood, "it sat on the vehicle that day"
    result = from_body(made.incident.facts.rig_result, RigResult)
    assert result.on == day
    assert made.pieces[0].dossier.quarantines[0].facts.on == day


def test_a_retirement_entered_only_later_did_not_stand_that_day(office: Office) -> None:
    day, then = office.today, later(office, 4)
    kind = open_item(then, "SH-2").dossier.kind
    seen = all_good(then, kind, SHACKLE_READINGS, day, "", cracks="bad")
    assert record_inspection(then, "SH-2", seen).verdict.outcome is Outcome.RETIRE
    stood = {one.tag: one.outcome for one in reported(then, on=day).incident.facts.stood}
    assert stood["SH-2"] is Outcome.FIT


def test_a_piece_that_came_only_later_had_no_verdict_that_day(office: Office) -> None:
    day, then = office.today, later(office, 4)
    fit(then, shackle("SH-9"), SHACKLE_READINGS)
    made = reported(then, on=day, pieces=("SH-9",))
    stood = next(one for one in made.incident.facts.stood if one.tag == "SH-9")
    assert (stood.outcome, stood.verdict_id) == (Outcome.HOLD, "")
    assert outcome(then, "SH-9") is Outcome.HOLD


def test_parts_and_vehicle_of_a_piece_that_was_named_alone_are_kept_as_well(office: Office) -> None:
    fit(office, point("RP-2"), POINT_READINGS)
    fit_part(office, "RP-2", Fitted("V-2", End.FRONT))
    made = reported(office, rig=None, pieces=("rp-1",), broken=()).incident.facts
    assert set(made.pieces) == {"RP-1", "RP-2"} and made.vehicles == ("V-2",)


def test_what_is_destroyed_is_named_and_not_kept(office: Office) -> None:
    assert looked_at(office, "SH-2", SHACKLE_READINGS, cracks="bad") is Outcome.RETIRE
    destroy_item(office, "SH-2", "bow cut through")
    made = reported(later(office, 1))
    assert [tag for tag, _ in made.incident.facts.gone] == ["SH-2"]
    assert "cannot be shown as it was found" in made.incident.facts.gone[0][1]
    assert "SH-2" not in {one.dossier.item.tag for one in made.pieces}
    told = incident_told(office, made.incident.ref)
    assert "made unusable" in next(one.state for one in told.pieces if one.tag == "SH-2")


def test_a_retired_piece_is_kept_whole(office: Office) -> None:
    assert looked_at(office, "SH-2", SHACKLE_READINGS, cracks="bad") is Outcome.RETIRE
    ref = reported(office).incident.ref
    with pytest.raises(Refused, match="kept as found"):
        destroy_item(office, "SH-2", "bow cut through")
    assert let_go(office, ref, "SH-2") is Outcome.RETIRE
    destroy_item(office, "SH-2", "bow cut through")


DEEDS: dict[str, Callable[[Office], object]] = {
    "lend": lambda office: lend(office, ["SH-1"], "Di Member", office.today),
    "fit": lambda office: fit_part(office, "SH-1", Fitted("V-1")),
    "fit beside": lambda office: fit_part(office, "RP-3", Fitted("V-2", End.FRONT)),
    "take off": lambda office: take_off_part(office, "RP-1"),
    "move": lambda office: fit_part(office, "RP-1", Fitted("V-1", End.REAR)),
    "propose": lambda office: propose_rig(office, "T-1", Method.KINETIC, "V-1", "V-2"),
    "sell its vehicle": lambda office: change_vehicle(office, "V-2", lambda one: replace(one, owner="Di"), "sold"),
}


@pytest.mark.parametrize("deed", DEEDS.values(), ids=DEEDS.keys())
def test_nothing_that_changes_or_takes_away_evidence_is_done(office: Office, deed: Callable[[Office], object]) -> None:
    fit(office, point("RP-3"), POINT_READINGS)
    reported(office)
    before = verify_book(office)
    with pytest.raises(Refused, match="kept as found"):
        deed(office)
    assert verify_book(office) == before


def test_a_part_that_was_released_stays_on_a_vehicle_that_was_not(office: Office) -> None:
    ref = reported(office).incident.ref
    let_go(office, ref, "RP-1")
    with pytest.raises(Refused, match="V-2 is kept as found"):
        take_off_part(office, "RP-1")
    release_vehicle(office, ref, "V-2", second=SECOND, why=WHY)
    take_off_part(office, "RP-1")


def test_looking_pulling_and_weather_are_written_down_and_lift_nothing(office: Office) -> None:
    reported(office)
    then = later(office, 3)
    record_use(then, "SH-1", NewUse(then.today, 1))
    record_exposure(then, "SH-1", NewExposure(then.today, Weather.SALT))
    for kind in InspectionKind:
        seen = all_good(then, open_item(then, "SH-1").dossier.kind, SHACKLE_READINGS)
        assert record_inspection(then, "SH-1", replace(seen, kind=kind)).verdict.outcome is Outcome.HOLD
    assert "two competent persons" in open_item(then, "SH-1").explanation.plain


def test_a_piece_is_let_go_by_two_that_may_judge_it_and_do_not_own_it(office: Office) -> None:
    fit(office, shackle("SH-9", owner=SECOND), SHACKLE_READINGS)
    ref = reported(office, pieces=("SH-9",)).incident.ref
    refused: dict[str, Callable[[], object]] = {
        "cannot be both names": lambda: release_evidence(office, ref, "SH-1", second="Ada Officer", why=WHY),
        "not entered as competent": lambda: release_evidence(office, ref, "SH-1", second="Di Member", why=WHY),
        "judge of his own gear": lambda: release_evidence(office, ref, "SH-9", second=SECOND, why=WHY),
        "empty": lambda: release_evidence(office, ref, "SH-1", second=SECOND, why=" "),
        "is not kept": lambda: release_evidence(office, ref, "RP-9", second=SECOND, why=WHY),
        "No incident": lambda: release_evidence(office, "I-0", "SH-1", second=SECOND, why=WHY),
    }
    fit(office, point("RP-9"), POINT_READINGS)
    for why, deed in refused.items():
        with pytest.raises(Refused, match=why):
            deed()
    assert outcome(office, "SH-1") is Outcome.HOLD
    add(office, "Cy Third")
    release_evidence(office, ref, "SH-9", second="Cy Third", why=WHY)


def test_a_vehicle_is_let_go_by_two_that_are_competent_and_do_not_own_it(office: Office) -> None:
    ref = reported(office).incident.ref
    with pytest.raises(Refused, match="not entered as competent"):
        release_vehicle(office, ref, "V-1", second="Di Member", why=WHY)
    with pytest.raises(Refused, match="cannot be both"):
        release_vehicle(office, ref, "V-1", second="Ada Officer", why=WHY)
    release_vehicle(office, ref, "V-1", second=SECOND, why=WHY)
    with pytest.raises(Refused, match="is not kept"):
        release_vehicle(office, ref, "V-1", second=SECOND, why=WHY)


def test_of_two_incidents_the_second_still_keeps_it(office: Office) -> None:
    one, two = reported(office).incident.ref, reported(office).incident.ref
    assert one != two
    let_go(office, one, "SH-1")
    looked_at(office, "SH-1", SHACKLE_READINGS)
    with pytest.raises(Refused, match=two):
        lend(office, ["SH-1"], "Di Member", office.today)
    let_go(office, two, "SH-1")
    assert looked_at(office, "SH-1", SHACKLE_READINGS) is Outcome.FIT


def test_kept_vehicles_serve_on_no_trip_and_everybody_is_told(office: Office) -> None:
    ref = reported(office, rig=None, pieces=(), broken=(), vehicles=("V-1",)).incident.ref
    ready = {one.vehicle.tag: one.warning for one in readiness(office, "T-1").vehicles}
    assert ref in ready["V-1"] and ready["V-2"] == ""
    pairs = pair_trip(office, "T-1").lines
    assert pairs and all(one.outcome is None and ref in one.says for one in pairs)
    without = pack_trip(office, "T-1")
    release_vehicle(office, ref, "V-1", second=SECOND, why=WHY)
    assert all(ref not in one.says for one in pair_trip(office, "T-1").lines)
    assert pack_trip(office, "T-1") != without


def test_a_piece_found_later_is_kept_as_well(office: Office) -> None:
    fit(office, shackle("SH-9"), SHACKLE_READINGS)
    made = reported(office)
    assert hold_more(office, made.incident.ref, "SH-9", "It lay under the sand.").verdict.outcome is Outcome.HOLD
    told = {one.tag: one for one in incident_told(office, made.incident.ref).pieces}
    assert (told["SH-9"].verdict, told["SH-9"].state) == ("Fit", "kept as found")
    let_go(office, made.incident.ref, "SH-9")
    with pytest.raises(Refused, match="is or was kept"):
        hold_more(office, made.incident.ref, "SH-9", "once more")


def test_a_near_miss_holds_what_bore_the_pull_until_somebody_has_looked_and_keeps_nothing(office: Office) -> None:
    made = reported(office, gravity=Gravity.NEAR_MISS, broken=())
    assert {one.dossier.item.tag for one in made.pieces} == {"KS-1", "SH-1", "SH-2"}
    assert {one.verdict.outcome for one in made.pieces} == {Outcome.HOLD}
    use = made.pieces[0].dossier.uses[-1].facts
    assert (use.event, use.pull_count) == (Event.OVERLOAD, 0) and made.incident.ref in use.note
    assert outcome(office, "RP-1") is Outcome.FIT
    assert looked_at(office, "KS-1", STRAP_READINGS) is Outcome.FIT
    assert readiness(office, "T-1").vehicles[0].warning == ""
    with pytest.raises(Refused, match="near miss"):
        hold_more(office, made.incident.ref, "RP-1", "it was near")
    close_incident(office, made.incident.ref, "The pin is locked with wire from now on.")


def test_a_closed_report_takes_nothing_new(office: Office) -> None:
    ref = reported(office, gravity=Gravity.NEAR_MISS, broken=()).incident.ref
    close_incident(office, ref, "looked at")
    with pytest.raises(Refused, match="is closed"):
        add_statement(office, ref, "Ned Watcher", "I saw more.")
    with pytest.raises(Refused, match="is closed"):
        close_incident(office, ref, "again")


def test_a_report_that_cannot_be_is_refused_by_field_and_keeps_nothing(office: Office) -> None:
    before = verify_book(office)
    cases: dict[str, dict[str, object]] = {
        "day": {"on": office.today + timedelta(days=1)},
        "place": {"place": "  "},
        "what happened": {"what": ""},
        "witness": {"witnesses": ("two\nlines",)},
        "distance": {"distances": (Distance("a", "b", metres("0 m")),)},
        "broke": {"broken": ("RP-77",), "pieces": ()},
        "trip": {"trip": "T-9"},
        "vehicle": {"vehicles": ("V-9",)},
        "tag": {"pieces": ("SH-77",)},
        "pieces": {"rig": None, "pieces": (), "broken": ()},
        "reported by": {"by": "Nobody Known"},
    }
    for field, changes in cases.items():
        with pytest.raises(Refused) as refusal:
            reported(office, **changes)
        wanted = "tag" if field == "broke" else field
        assert refusal.value.field == wanted, field
        assert refusal.value.what_to_do
    with pytest.raises(Refused, match="lies before"):
        reported(office, on=office.today - timedelta(days=1000))
    with pytest.raises(Refused, match="more than a near miss"):
        reported(office, gravity=Gravity.NEAR_MISS)
    with pytest.raises(Refused, match="none of the pieces"):
        reported(office, broken=("RP-1",), rig=None, pieces=("SH-1",))
    assert verify_book(office) == before


def test_custody_is_kept_of_evidence_alone(office: Office) -> None:
    fit(office, shackle("SH-9"), SHACKLE_READINGS)
    ref = reported(office).incident.ref
    with pytest.raises(Refused, match="is not kept"):
        add_custody(office, ref, "SH-9", "Sgt Stern")
    with pytest.raises(Refused, match="empty"):
        add_custody(office, ref, "SH-1", " ")


def test_pieces_of_one_batch_with_what_broke_are_named(office: Office) -> None:
    for tag, mark, serial in (
        ("KS-2", "zuf", "z9-044"),
        ("KS-3", "ZUF", "Z8-001"),
        ("KS-4", "OTHER", "Z9-003"),
        ("KS-5", "ZUF", ""),
    ):
        book_in(office, replace(strap(tag), maker_mark=mark, serial=serial))
    ref = reported(office, broken=("KS-1",)).incident.ref
    found = {one.tag: one.why for one in kin_of_broken(office, ref)}
    assert set(found) == {"KS-2", "KS-5"} and "Z9-" in found["KS-2"]
    assert outcome(office, "KS-2") is not Outcome.RETIRE
    assert kin_of_broken(office, reported(office, broken=()).incident.ref) == ()


def test_the_batch_is_what_stands_before_the_last_figures() -> None:
    assert [batch_of(one) for one in ("Z9-001", "b 12/7a", "20240017", "12", "LOT", "")] == [
        "Z9-", "B12/", "20240", "", "LOT", ""
    ]  # fmt: skip


def test_every_piece_of_the_sample_can_be_evidence_and_then_is_never_lent(sample: Office) -> None:
    tags = tuple(row.tag for row in list_gear(sample).rows)
    made = reported(sample, rig=None, pieces=tags, broken=(), trip="", on=sample.today)
    kept = [one.dossier.item.tag for one in made.pieces]
    assert len(kept) + len(made.incident.facts.gone) == len(tags)
    for tag in kept:
        assert outcome(sample, tag).severity >= Outcome.HOLD.severity
        with pytest.raises(Refused):
            lend(sample, [tag], "Nell Hobbery", sample.today)


def test_what_is_reported_is_plain_data(office: Office) -> None:
    told = accident(office)
    kept = reported(office).incident.facts
    assert (kept.what, kept.place, kept.distances, kept.broken) == (told.what, told.place, told.distances, told.broken)
    assert kept.by == office.officer.id

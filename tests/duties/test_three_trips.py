"""Three trips of the sample register from plan to debrief: what verdicts do on the way and what the ledger says."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from inspector.duties.lend import loans
from inspector.duties.look_up import list_gear, open_item, people
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.outcome import Outcome
from inspector.gear.rig_result import RigOutcome
from inspector.gear.use import Event
from inspector.rulebook.load import Rulebook
from tests.conftest import seated_copy
from tests.duties.journeys import JOURNEYS, NEAR_MISS, Taken, take


@pytest.fixture(scope="module", params=JOURNEYS, ids=lambda one: one.ref)
def taken(
    request: pytest.FixtureRequest, sample_once: Path, tmp_path_factory: pytest.TempPathFactory, rules: Rulebook
) -> Iterator[Taken]:
    """A trip that is over, on a copy of the sample register; no test here changes what another one reads."""
    office = seated_copy(sample_once, tmp_path_factory.mktemp("trip"), rules)
    yield take(office, request.param)
    office.book.close()


def outcomes(told: Taken, tag: str) -> list[str]:
    """The outcome of each verdict on a piece, the first one first."""
    rows = [row for row in reversed(history_of(told.office, tag)) if row.what == "Verdict"]
    return [row.text.partition(":")[0] for row in rows]


def test_the_kit_that_was_packed_makes_a_rig_and_is_fit_to_leave(taken: Taken) -> None:
    assert taken.first.outcome in {RigOutcome.SOUND, RigOutcome.CAUTION}
    assert taken.first.least_margin and taken.first.least_margin >= 1
    assert [one.tag for one in taken.sheet.staying if not one.part_of] == []
    going = {one.tag: one.part_of for one in taken.sheet.going}
    assert set(taken.kit) <= set(going) and all(going[tag] for tag in set(going) - set(taken.kit))


def test_a_shackle_that_a_member_found_bad_breaks_the_rig_and_the_next_one_does_without_it(taken: Taken) -> None:
    assert taken.broken.rig == taken.first.rig and taken.broken.outcome is RigOutcome.UNSOUND
    assert taken.bad in {tag for one in taken.broken.findings if one.outcome is RigOutcome.UNSOUND for tag in one.about}
    assert taken.bad not in taken.used
    assert taken.rig.outcome in {RigOutcome.SOUND, RigOutcome.CAUTION}
    assert outcomes(taken, taken.bad)[-1] == "Retire"


def test_the_sheet_that_came_back_checks_all_the_rest_and_makes_nothing_milder(taken: Taken) -> None:
    printed = {one.tag: one.outcome for one in taken.sheet.going}
    for one in taken.on_sheet:
        assert one.verdict.outcome.severity >= printed[one.dossier.item.tag].severity
        assert one.dossier.inspections[-1].facts.sheet == taken.sheet.imprint.number
    assert taken.checked.unchecked == () and taken.checked.done_count == len(taken.sheet.going)
    assert {one.tag for one in taken.checked.staying} >= {taken.bad}


def test_the_near_miss_is_an_overload_of_every_piece_at_both_ends_and_holds_it(taken: Taken) -> None:
    assert {one.dossier.item.tag for one in taken.told.pieces} == taken.used
    sides = {link.side for link in taken.rig.links} - {""}
    assert sides == {taken.journey.pulling, taken.journey.bogged}
    for tag in taken.used:
        found = open_item(taken.office, tag)
        bore = found.dossier.uses[-1].facts
        assert (bore.pull_count, bore.event) == (2, Event.OVERLOAD) and NEAR_MISS in bore.note
        assert found.verdict.outcome.severity >= Outcome.HOLD.severity
        assert "event-answered" in {reason.rule for reason in found.explanation.reasons}


def test_what_lay_in_the_bag_comes_back_with_its_weather_and_no_pull(taken: Taken) -> None:
    for tag in set(taken.kit) - taken.used:
        found = open_item(taken.office, tag).dossier
        assert found.exposures[-1].facts.weather is taken.journey.weather
        assert all(one.facts.on < taken.office.today for one in found.uses), "no pull of this trip"
        assert not found.opinions or found.opinions[-1].facts.on < taken.office.today, (
            "told is told: nothing is doubted"
        )


def test_nothing_of_the_trip_is_out_any_more(taken: Taken) -> None:
    assert {one.dossier.item.tag for one in taken.back} == set(taken.kit)
    assert taken.journey.ref not in {one.trip for one in loans(taken.office)}


def test_the_record_of_a_piece_tells_the_trip_in_order(taken: Taken) -> None:
    tag = next(tag for tag in taken.kit if tag in taken.used and tag not in taken.rig.rig.dampers)
    told = [row.what for row in reversed(history_of(taken.office, tag))]
    lent = len(told) - 1 - told[::-1].index("Lent")
    assert [what for what in told[lent:] if what != "Verdict"] == [
        "Lent",
        "Check before use",
        "Use",
        "Returned",
        "Exposure",
    ]
    assert outcomes(taken, tag)[-1] == "Hold"


def test_each_deed_has_its_line_in_the_ledger_and_the_book_is_whole(taken: Taken) -> None:
    deeds = [deed for deed, _ in taken.lines if deed not in {"judge anew", "plan trip"}]
    rest = len(taken.sheet.going) - 1
    assert deeds == [
        *("change trip", "keep rig", "print sheet", "lend", "inspect", "keep rig"),
        *["inspect"] * rest,
        *("debrief", "take back kit"),
    ]
    assert verify_book(taken.office).faults == ()
    head = next(said for said in taken.sheet.imprint.rests_on if said.startswith("Ledger head")).split()[-1]
    assert verify_book(taken.office, head).faults == (), "the head on the paper is still in the chain"


def test_the_ledger_names_who_had_the_kit_and_who_told(taken: Taken) -> None:
    leader = next(one.id for one in people(taken.office) if one.name == taken.journey.leader)
    bodies = {deed: str(body) for deed, body in taken.lines}
    lent, told = bodies["lend"], bodies["debrief"]
    assert leader in lent and taken.journey.ref in lent
    assert leader in told and NEAR_MISS in told and all(f"'{tag}'" in told for tag in taken.used)
    assert all(f"'{tag}'" in bodies["take back kit"] for tag in taken.kit)


def test_no_piece_is_milder_after_the_trip_than_on_its_sheet(taken: Taken) -> None:
    """No competent person has looked at anything meanwhile, so nothing can have become better."""
    after = {row.tag: row.outcome for row in list_gear(taken.office).rows}
    for one in taken.sheet.going:
        now = after[one.tag]
        assert now is not None and now.severity >= one.outcome.severity

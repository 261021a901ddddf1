"""Stories: a trip is told afterwards, and every piece of its rigs has the use, from one end to the other."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.debrief import debrief
from inspector.duties.destroy_item import destroy_item
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.debrief import NewDebrief, RigUsed
from inspector.gear.item import NewItem, Rating
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome
from inspector.gear.rig import Rig
from inspector.gear.use import Event
from inspector.refused import Refused
from inspector.units import Dimension, Figure, read
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle
from tests.duties.rigs import KIT, SNATCH, later, named
from tests.duties.test_opinions import add
from tests.fresh import copied


@pytest.fixture
def office(ready_once: Office, tmp_path: Path) -> Iterator[Office]:
    """A club with a fit kit, a member and a trip."""
    made = copied(ready_once, tmp_path)
    yield made
    made.book.close()


def pull(typed: str) -> Figure:
    return read(typed, Dimension.FORCE, field="h")


def used(office: Office, rig: Rig = SNATCH, pulls: int = 2, **more: object) -> RigUsed:
    return RigUsed(rig, pulls, office.today, **more)  # type: ignore[arg-type]


def told(office: Office, *rigs: RigUsed, by: str = "Di Member") -> NewDebrief:
    return NewDebrief("t-1", office.today, rigs, by)


def test_every_piece_of_a_rig_has_the_pulls_and_the_loose_ends_have_none(office: Office) -> None:
    before = verify_book(office).line_count
    kept = debrief(office, told(office, used(office)))
    assert verify_book(office).line_count == before + 1 and verify_book(office).faults == ()
    assert {one.dossier.item.tag for one in kept.pieces} == set(KIT)
    for tag in KIT:
        facts = open_item(office, tag).dossier.uses[0].facts
        assert (facts.on, facts.pull_count, facts.event) == (office.today, 2, Event.NONE)
        assert facts.note == "Trip T-1, Beach snatch."
        assert next(row for row in history_of(office, tag) if row.what == "Use").by == "Di Member"
    assert {one.verdict.outcome for one in kept.pieces} == {Outcome.FIT}


def test_a_jerk_or_a_near_miss_is_an_overload_of_every_piece(office: Office) -> None:
    for happened, why in (
        ({"jerked": True}, "It jerked"),
        ({"near_miss": "the hook slid"}, "Near miss: the hook slid"),
    ):
        kept = debrief(office, told(office, used(office, **happened)))
        assert {one.verdict.outcome for one in kept.pieces} == {Outcome.HOLD}
        for one in kept.pieces:
            facts = one.dossier.uses[-1].facts
            assert facts.event is Event.OVERLOAD and why in facts.note


def test_the_hardest_pull_overloads_only_what_may_not_take_it(office: Office) -> None:
    kept = debrief(office, told(office, used(office, hardest=pull("40 kN"))))
    events = {one.dossier.item.tag: one.dossier.uses[0].facts for one in kept.pieces}
    assert events["KS-1"].event is Event.OVERLOAD, "35 % of 8,000 kg is 27.5 kN"
    assert "40 kN is more than" in events["KS-1"].note
    assert events["SH-1"].event is Event.NONE, "its working load limit is 46.6 kN"


def test_each_piece_bears_its_own_share_of_the_pull(office: Office) -> None:
    asked: list[RigUsed] = []

    def shares(one: RigUsed) -> dict[str, float]:
        asked.append(one)
        return {"SH-1": 2.0, "KS-1": 0.5}

    kept = debrief(office, told(office, used(office, hardest=pull("40 kN"))), shares)
    events = {one.dossier.item.tag: one.dossier.uses[0].facts.event for one in kept.pieces}
    assert events == {"SH-1": Event.OVERLOAD, "KS-1": Event.NONE, "SH-2": Event.NONE}
    assert [one.rig.name for one in asked] == ["Beach snatch"]


def test_a_damper_has_the_pulls_as_well_and_bears_no_force(office: Office) -> None:
    book_in(office, NewItem("DM-1", "damper", Rating(Basis.UNRATED, None, None, "")))
    laid = named(SNATCH, dampers=("dm-1",))
    kept = debrief(office, told(office, used(office, laid, hardest=pull("40 kN"))))
    facts = next(one for one in kept.pieces if one.dossier.item.tag == "DM-1").dossier.uses[0].facts
    assert (facts.pull_count, facts.event) == (2, Event.NONE)
    jerked = debrief(office, told(office, used(office, laid, jerked=True)))
    facts = next(one for one in jerked.pieces if one.dossier.item.tag == "DM-1").dossier.uses[-1].facts
    assert facts.event is Event.OVERLOAD


def test_a_piece_in_two_rigs_has_both_uses_and_is_judged_once(office: Office) -> None:
    second = named(SNATCH, name="By the creek", runs=(("SH-1", "KS-1"),))
    kept = debrief(office, told(office, used(office), used(office, second, 3)))
    assert len(kept.pieces) == 3
    assert [one.facts.pull_count for one in open_item(office, "KS-1").dossier.uses] == [2, 3]
    assert [one.facts.pull_count for one in open_item(office, "SH-2").dossier.uses] == [2]
    verdicts = [row for row in history_of(office, "KS-1") if row.what == "Verdict"]
    assert len(verdicts) == 3, "booked, inspected, told"


def test_two_debriefs_of_a_trip_are_both_kept_and_a_wrong_use_is_struck(office: Office) -> None:
    add(office, "Bo Second")
    debrief(office, told(office, used(office)))
    debrief(office, told(office, used(office)))
    with office.book.reading() as page:
        assert len(page.debriefs("T-1")) == 2
    assert len(open_item(office, "KS-1").dossier.uses) == 2
    ref = next(row.ref for row in history_of(office, "KS-1") if row.what == "Use")
    assert len(strike_entry(office, "KS-1", ref, "Bo Second", "told twice").dossier.uses) == 1


def test_a_day_before_the_trip_or_to_come_is_refused_and_nothing_is_kept(office: Office) -> None:
    before, day = verify_book(office), timedelta(days=1)
    cases = [
        NewDebrief("T-1", office.today - day, ()),
        NewDebrief("T-1", office.today + day, ()),
        NewDebrief("T-1", office.today, (RigUsed(SNATCH, 1, office.today - day),)),
        NewDebrief("T-1", office.today, (RigUsed(SNATCH, 1, office.today + day),)),
        NewDebrief("T-9", office.today, ()),
        NewDebrief("T-1", office.today, (), by="Somebody Else"),
        told(office, used(office, pulls=-1)),
        told(office, used(office), used(office, named(SNATCH, runs=(("SH-1", "ZZ-9"),)))),
        told(office, used(office, named(SNATCH, bogged="V-9"))),
    ]
    for one in cases:
        with pytest.raises(Refused) as refusal:
            debrief(office, one)
        assert refusal.value.field and refusal.value.what_to_do
    assert verify_book(office) == before


def test_a_piece_made_unusable_since_stands_in_the_debrief_alone(office: Office) -> None:
    kind = open_item(office, "SH-2").dossier.kind
    record_inspection(office, "SH-2", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    destroy_item(office, "SH-2", "sawn through at the beach")
    kept = debrief(office, told(office, used(office)))
    assert kept.destroyed == ("SH-2",) and {one.dossier.item.tag for one in kept.pieces} == {"KS-1", "SH-1"}
    assert "SH-2" in kept.debrief.facts.rigs[0].rig.tags
    assert open_item(office, "SH-2").dossier.uses == ()


def test_a_piece_whose_strength_nobody_knows_is_overloaded_by_any_known_pull(office: Office) -> None:
    remembered = replace(shackle("SH-3").rating, stated_on="memory")
    book_in(office, replace(shackle("SH-3"), rating=remembered))
    rig = named(SNATCH, runs=(("SH-3", "KS-1"),))
    found = debrief(office, told(office, used(office, rig, hardest=pull("1 kN"))))
    events = {one.dossier.item.tag: one.dossier.uses[0].facts.event for one in found.pieces}
    assert events == {"SH-3": Event.OVERLOAD, "KS-1": Event.NONE}


def test_a_debrief_told_days_later_keeps_the_days_of_the_pulls(office: Office) -> None:
    then = later(office, 3)
    kept = debrief(then, NewDebrief("T-1", then.today, (RigUsed(SNATCH, 1, office.today),)))
    assert {one.dossier.uses[0].facts.on for one in kept.pieces} == {office.today}
    assert kept.debrief.facts.by == office.officer.id


def test_a_debrief_leaves_every_piece_of_every_rig_with_its_use(office: Office) -> None:
    runs = st.lists(st.sampled_from([*KIT, "tree@ground", "towing_eye@V-2"]), min_size=2, max_size=5, unique=True)
    rigs = st.builds(
        RigUsed,
        runs.map(lambda run: named(SNATCH, runs=(tuple(run),))),
        st.integers(0, 9),
        st.just(office.today),
        st.none() | st.integers(1, 200).map(lambda force: pull(f"{force} kN")),
        st.booleans(),
        st.sampled_from(["", "", "the strap rubbed on the sill"]),
    )

    @given(st.lists(rigs, max_size=3))
    @settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
    def holds(listed: list[RigUsed]) -> None:
        before = {tag: len(open_item(office, tag).dossier.uses) for tag in KIT}
        debrief(office, told(office, *listed))
        for tag in KIT:
            new = open_item(office, tag).dossier.uses[before[tag] :]
            with_it = [one for one in listed if tag in one.rig.tags]
            assert [one.facts.pull_count for one in new] == [one.pull_count for one in with_it]
            for use, one in zip(new, with_it, strict=True):
                if one.jerked or one.near_miss:
                    assert use.facts.event is Event.OVERLOAD

    holds()

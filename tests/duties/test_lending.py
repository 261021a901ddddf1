"""Stories: pieces go out and come back, with what they went through or with a doubt."""

from collections.abc import Callable
from datetime import date, timedelta
from itertools import count

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.debrief import debrief
from inspector.duties.destroy_item import destroy_item
from inspector.duties.fit_parts import take_off_part
from inspector.duties.give_back import give_back, give_back_kit
from inspector.duties.give_opinion import doubt
from inspector.duties.lend import lend, lend_kit, loans
from inspector.duties.look_up import list_gear, open_item, where_is
from inspector.duties.office import Office
from inspector.duties.print_lending_slip import enter_lending_slip
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.custody import NOTHING_HAPPENED, Loan, Untold, WentThrough
from inspector.gear.debrief import NewDebrief
from inspector.gear.inspection import InspectionKind
from inspector.gear.judged import Judged
from inspector.gear.kind import Grade
from inspector.gear.outcome import Outcome
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.language import show_day
from inspector.refused import Refused
from tests.duties.gear import HOLE, SHACKLE_READINGS, STRAP_READINGS, all_good, mount, shackle, strap
from tests.duties.rigs import KIT, fit, fit_kit, later, member, planned, ready
from tests.duties.test_opinions import add

OUT = "Di Member"


def lent_shackle(office: Office) -> None:
    """A fit shackle, out for a week."""
    fit(office, shackle(), SHACKLE_READINGS)
    member(office)
    lend(office, ["SH-1"], OUT, office.today + timedelta(days=7))


def test_a_piece_goes_out_and_everybody_sees_with_whom(office: Office) -> None:
    lent_shackle(office)
    back_by = office.today + timedelta(days=7)
    assert loans(office) == (Loan("SH-1", "Bow shackle", OUT, office.today, back_by),)
    assert list_gear(office).rows[0].place == "on loan to Di Member"
    assert where_is(office, "sh-1") == "on loan to Di Member since 25 Nov 2026, to be back by 2 Dec 2026"
    row = history_of(office, "SH-1")[0]
    assert (row.what, row.text, row.by) == ("Lent", "to Di Member, to be back by 2 Dec 2026", "Ada Officer")


def test_the_slip_names_the_day_that_the_verdict_names(office: Office) -> None:
    fit_kit(office)
    member(office)
    verdict = open_item(office, "KS-1").verdict
    turns = verdict.turns_first
    assert turns and verdict.next_due and turns <= verdict.next_due
    assert show_day(turns) in open_item(office, "KS-1").explanation.plain
    lend(office, ["KS-1"], OUT, turns)
    (at,) = enter_lending_slip(office, OUT).pieces
    assert f"From {show_day(turns)} on time alone may change its verdict" in at.mind
    give_back(office, "KS-1", OUT, NOTHING_HAPPENED)
    lend(office, ["KS-1"], OUT, turns - timedelta(days=1))
    (below,) = enter_lending_slip(office, OUT).pieces
    assert "time alone" not in below.mind


def test_a_loan_past_its_day_is_overdue_and_stands_first(office: Office) -> None:
    fit_kit(office)
    member(office)
    lend(office, ["KS-1"], OUT, office.today + timedelta(days=9))
    lend(office, ["SH-1"], OUT, office.today + timedelta(days=2))
    then = later(office, 5)
    assert [(one.tag, one.overdue_days(then.today)) for one in loans(then)] == [("SH-1", 3), ("KS-1", 0)]
    assert where_is(then, "SH-1").endswith("3 days overdue")
    assert [one.overdue_days(later(office, 2).today) for one in loans(office)] == [0, 0]


def test_a_whole_kit_goes_out_with_one_line_in_the_ledger_until_the_trip_ends(office: Office) -> None:
    trip = ready(office)
    before = verify_book(office).line_count
    lent = lend_kit(office, "t-1", OUT)
    assert verify_book(office).line_count == before + 1
    assert [one.tag for one in lent] == list(KIT)
    assert {(one.due, one.trip) for one in loans(office)} == {(trip.last_on, "T-1")}


def test_all_go_out_or_none(office: Office) -> None:
    ready(office)
    doubt(office, "SH-2", "it fell from the roof")
    before = verify_book(office)
    with pytest.raises(Refused, match="Doubts voiced") as refusal:
        lend_kit(office, "T-1", OUT)
    assert refusal.value.field == "SH-2"
    assert loans(office) == () and verify_book(office) == before


def test_a_piece_that_is_out_is_refused_with_whom_since_when(office: Office) -> None:
    lent_shackle(office)
    with pytest.raises(Refused, match=r"^SH-1: It is on loan to Di Member since 25 Nov 2026 already"):
        lend(later(office, 1), ["SH-1"], "Ada Officer", office.today + timedelta(days=3))


def test_what_was_retired_or_made_unusable_never_leaves(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    with pytest.raises(Refused, match="Retire"):
        lend(office, ["SH-1"], "Ada Officer", office.today)
    destroy_item(office, "SH-1", "bow cut through")
    with pytest.raises(Refused, match="made unusable"):
        lend(office, ["SH-1"], "Ada Officer", office.today)


def test_a_piece_held_for_one_purpose_alone_may_leave_for_the_other(sample: Office) -> None:
    split = [
        row.tag
        for row in list_gear(sample, outcome=Outcome.HOLD).rows
        if {one.outcome for one in open_item(sample, row.tag).verdict.by_purpose} >= {Outcome.HOLD, Outcome.FIT}
    ]
    assert split, "the sample has such a piece"
    take_off_part(sample, split[0])  # what sits on a vehicle does not leave
    assert lend(sample, split[:1], "Nell Hobbery", sample.today)[0].tag == split[0]
    held = next(row.tag for row in list_gear(sample, outcome=Outcome.HOLD).rows if row.tag not in split)
    with pytest.raises(Refused, match="Hold"):
        lend(sample, [held], "Nell Hobbery", sample.today)


def test_a_piece_that_time_has_put_on_hold_does_not_leave_though_nobody_judged_it_anew(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    then = later(office, 400)
    assert open_item(then, "SH-1").verdict.outcome is Outcome.FIT
    with pytest.raises(Refused, match="Hold"):
        lend(then, ["SH-1"], "Ada Officer", then.today)


def test_a_loan_that_cannot_be_is_refused_by_field(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    today = office.today
    cases: dict[str, Callable[[], object]] = {
        "due": lambda: lend(office, ["SH-1"], "Ada Officer", today - timedelta(days=1)),
        "holder": lambda: lend(office, ["SH-1"], "Somebody Else", today),
        "trip": lambda: lend(office, ["SH-1"], "Ada Officer", today, "T-9"),
        "tag": lambda: lend(office, [], "Ada Officer", today),
    }
    for field, deed in cases.items():
        with pytest.raises(Refused) as refusal:
            deed()
        assert refusal.value.field == field
    with pytest.raises(Refused, match="Nobody said when"):
        lend(office, ["SH-1"], "Ada Officer")
    with pytest.raises(Refused, match="twice"):
        lend(office, ["SH-1", "sh-1"], "Ada Officer", today)
    with pytest.raises(Refused, match="No piece has the tag"):
        lend(office, ["SH-1", "ZZ-9"], "Ada Officer", today)
    assert loans(office) == ()


def test_who_borrows_is_told_what_falls_due_before_the_piece_is_back(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    lent = lend(office, ["SH-1"], "Ada Officer", office.today + timedelta(days=400))
    assert lent[0].look_due == open_item(office, "SH-1").verdict.next_due
    assert loans(office)[0].look_due == lent[0].look_due


def test_nothing_happened_is_said_and_leaves_the_piece_fit(office: Office) -> None:
    lent_shackle(office)
    back = give_back(later(office, 3), "SH-1", OUT, NOTHING_HAPPENED)
    assert back.verdict.outcome is Outcome.FIT and back.dossier.opinions == ()
    assert (
        loans(office) == ()
        and where_is(office, "SH-1").startswith("in store")
        and list_gear(office).rows[0].place == ""
    )
    row = next(one for one in history_of(later(office, 3), "SH-1") if one.what == "Returned")
    assert (row.text, row.by) == ("from Di Member", OUT)


def test_what_it_went_through_is_logged_in_the_name_of_whoever_brought_it(office: Office) -> None:
    fit(office, strap(), STRAP_READINGS)
    brought = member(office)
    lend(office, ["KS-1"], brought.name, office.today + timedelta(days=7))
    then = later(office, 4)
    sea = NewExposure(office.today, Weather.SALT, 2, rinsed=True, dried=False)
    told = WentThrough((NewUse(then.today, 3, Event.OVERLOAD),), (sea,))
    back = give_back(then, "KS-1", brought.name, told, note="wet")
    assert back.verdict.outcome is Outcome.HOLD
    assert back.dossier.uses[0].facts == NewUse(then.today, 3, Event.OVERLOAD, by=brought.id)
    assert back.dossier.exposures[0].facts == replace(sea, by=brought.id)
    texts = [(row.what, row.text) for row in history_of(then, "KS-1")]
    assert ("Exposure", "salt, 2 days, rinsed, not dried") in texts
    assert ("Returned", "from Di Member. wet") in texts
    assert ("Use", "3 pulls, overload") in texts


@pytest.mark.parametrize(
    ("told", "untold", "words"),
    [
        (WentThrough(), (Untold.USES, Untold.EXPOSURES), "from Di Member; nobody told its pulls; nobody told of salt"),
        (WentThrough(uses=()), (Untold.EXPOSURES,), "from Di Member; nobody told of salt"),
        (WentThrough(exposures=()), (Untold.USES,), "from Di Member; nobody told its pulls"),
    ],
)
def test_silence_keeps_the_return_and_holds_the_piece_until_it_was_looked_at(
    office: Office, told: WentThrough, untold: tuple[Untold, ...], words: str
) -> None:
    lent_shackle(office)
    then = later(office, 2)
    back = give_back(then, "SH-1", OUT, told)
    assert back.verdict.outcome is Outcome.HOLD and loans(then) == ()
    assert "Doubts voiced" in back.explanation.headline
    rows = history_of(then, "SH-1")
    assert next(row for row in rows if row.what == "Returned").text.startswith(words)
    said = next(row for row in rows if row.what == "Doubt")
    assert said.text.startswith("Nobody told") and "on loan to Di Member since 25 Nov 2026" in said.text
    assert said.text.count("Nobody told") == len(untold) and said.by == "Ada Officer"
    kind = back.dossier.kind
    looked = all_good(then, kind, SHACKLE_READINGS)
    assert record_inspection(then, "SH-1", looked).verdict.outcome is Outcome.HOLD, "it may have been before the return"
    after = replace(looked, kind=InspectionKind.AFTER_EVENT)
    assert record_inspection(then, "SH-1", after).verdict.outcome is Outcome.FIT


def test_salt_inside_a_tube_is_reckoned_with_from_the_day_of_a_loan_of_which_nobody_told(office: Office) -> None:
    fit(office, mount(), HOLE)
    member(office)
    assert reading_due(open_item(office, "BM-1")) is None
    lend(office, ["BM-1"], OUT, office.today)
    back = give_back(office, "BM-1", OUT, WentThrough(uses=()))
    assert back.verdict.outcome is Outcome.HOLD
    outside = replace(all_good(office, back.dossier.kind, HOLE), kind=InspectionKind.AFTER_EVENT)
    looked = record_inspection(office, "BM-1", outside)
    due = reading_due(looked)
    assert due is not None and due > office.today, "no look from outside tells of the wall inside"
    assert looked.verdict.outcome is Outcome.FIT, "it only tows, so there is time until then"
    later_on = office.at(office.now + (due - office.today) + timedelta(days=1))
    assert record_use(later_on, "BM-1", NewUse(later_on.today, 0)).verdict.outcome is Outcome.HOLD


def reading_due(found: Judged) -> date | None:
    """The day by which its wall must be read."""
    return found.verdict.wall.next_reading_due if found.verdict.wall else None


def test_nothing_gets_milder_by_waiting_with_the_silence(office: Office) -> None:
    lent_shackle(office)
    give_back(office, "SH-1", OUT)
    for days in (1, 30, 360):
        with pytest.raises(Refused, match="Hold"):
            lend(later(office, days), ["SH-1"], OUT, later(office, days).today)


def test_a_return_that_cannot_be_is_refused_and_the_piece_stays_out(office: Office) -> None:
    lent_shackle(office)
    then, day = later(office, 3), timedelta(days=1)
    before = verify_book(office)
    cases: list[tuple[str, Callable[[], object]]] = [
        ("brought by", lambda: give_back(then, "SH-1", "Somebody Else", NOTHING_HAPPENED)),
        ("day", lambda: give_back(then, "SH-1", OUT, NOTHING_HAPPENED, then.today + day)),
        ("day", lambda: give_back(then, "SH-1", OUT, NOTHING_HAPPENED, office.today - day)),
        ("day", lambda: give_back(then, "SH-1", OUT, WentThrough((NewUse(office.today - day, 1),), ()))),
        ("day", lambda: give_back(then, "SH-1", OUT, WentThrough((), (NewExposure(office.today, Weather.MUD, 5),)))),
        ("pulls", lambda: give_back(then, "SH-1", OUT, WentThrough((NewUse(then.today, -1),), ()))),
        ("days", lambda: give_back(then, "SH-1", OUT, WentThrough((), (NewExposure(then.today, Weather.MUD, 0),)))),
    ]
    for field, deed in cases:
        with pytest.raises(Refused) as refusal:
            deed()
        assert refusal.value.field == field
    assert verify_book(office) == before and len(loans(office)) == 1


def test_a_piece_comes_back_once(office: Office) -> None:
    lent_shackle(office)
    give_back(office, "SH-1", OUT, NOTHING_HAPPENED)
    with pytest.raises(Refused, match="not on loan"):
        give_back(office, "SH-1", OUT, NOTHING_HAPPENED)


def test_a_piece_made_unusable_while_it_was_out_is_out_no_more(office: Office) -> None:
    lent_shackle(office)
    kind = open_item(office, "SH-1").dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    destroy_item(office, "SH-1", "sawn through at the beach")
    assert loans(office) == () and where_is(office, "SH-1").startswith("made unusable")
    with pytest.raises(Refused, match="made unusable"):
        give_back(office, "SH-1", OUT, NOTHING_HAPPENED)


def test_a_kit_comes_back_with_one_set_of_answers_but_for_the_pieces_that_have_their_own(office: Office) -> None:
    ready(office)
    lend_kit(office, "T-1", OUT)
    then = later(office, 2)
    sea = WentThrough((), (NewExposure(office.today, Weather.SALT, 2, rinsed=True),))
    before = verify_book(office).line_count
    own = {"ks-1": WentThrough((NewUse(then.today, 2),), sea.exposures)}
    back = give_back_kit(then, "T-1", OUT, sea, each=own, stay_out=["SH-2"])
    assert verify_book(office).line_count == before + 1
    assert [(one.dossier.item.tag, len(one.dossier.uses), len(one.dossier.exposures)) for one in back] == [
        ("KS-1", 1, 1),
        ("SH-1", 0, 1),
    ]
    assert [one.tag for one in loans(then)] == ["SH-2"]
    with pytest.raises(Refused, match="not out for the trip"):
        give_back_kit(then, "T-1", OUT, sea, each=own)
    with pytest.raises(Refused, match="Nothing is taken back"):
        give_back_kit(then, "T-1", OUT, sea, stay_out=["SH-2"])


def test_a_kit_is_taken_back_whole_or_not_at_all(office: Office) -> None:
    ready(office)
    lend_kit(office, "T-1", OUT)
    own = {"SH-2": WentThrough((NewUse(office.today - timedelta(days=9), 1),), ())}
    with pytest.raises(Refused):
        give_back_kit(office, "T-1", OUT, NOTHING_HAPPENED, each=own)
    assert [one.tag for one in loans(office)] == list(KIT)


def test_a_debrief_of_the_trip_tells_the_pulls_but_not_the_weather(office: Office) -> None:
    ready(office)
    lend_kit(office, "T-1", OUT)
    debrief(office, NewDebrief("T-1", office.today, ()))
    back = give_back_kit(office, "T-1", OUT, WentThrough(exposures=()))
    assert {one.verdict.outcome for one in back} == {Outcome.FIT}
    lend(office, ["SH-1"], OUT, office.today, "T-1")
    assert give_back(office, "SH-1", OUT).verdict.outcome is Outcome.HOLD


def test_a_use_told_at_the_return_is_struck_like_any_other(office: Office) -> None:
    lent_shackle(office)
    add(office, "Bo Second")
    give_back(office, "SH-1", OUT, WentThrough((NewUse(office.today, 1, Event.DROPPED),), ()))
    ref = next(row.ref for row in history_of(office, "SH-1") if row.what == "Use")
    assert strike_entry(office, "SH-1", ref, "Bo Second", "another piece fell").dossier.uses == ()


def test_a_register_with_loans_verifies(office: Office) -> None:
    ready(office)
    lend_kit(office, "T-1", OUT)
    give_back_kit(office, "T-1", OUT)
    assert verify_book(office).faults == ()


EVENTS = st.builds(NewUse, st.none(), st.integers(0, 12), st.sampled_from(Event))
SEAS = st.builds(
    NewExposure, st.none(), st.sampled_from(Weather), st.integers(1, 3), st.none() | st.booleans(), dried=st.none()
)
PIECES = (
    (strap, STRAP_READINGS),
    (shackle, SHACKLE_READINGS),
    (mount, {f"wall@{face}": "4.9 mm" for face in ("top", "bottom", "left", "right", "at pin hole")} | HOLE),
)


def test_lending_and_returning_with_all_told_is_never_milder_than_the_same_logged_by_hand(office: Office) -> None:
    member(office)
    numbers = count()

    @given(
        st.sampled_from(PIECES),
        st.lists(st.tuples(st.integers(0, 2), EVENTS), max_size=3),
        st.lists(st.tuples(st.integers(0, 2), SEAS), max_size=3),
        st.sampled_from([Grade.GOOD, Grade.GOOD, Grade.BAD]),
    )
    @settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
    def holds(piece: tuple, uses: list, seas: list, grade: Grade) -> None:  # type: ignore[type-arg]
        made, readings = piece
        tags = [f"X-{next(numbers)}" for _ in range(2)]
        for tag in tags:
            kind = book_in(office, made(tag)).dossier.kind
            good = all_good(office, kind, readings)
            first = replace(good, answers=(replace(good.answers[-1], grade=grade), *good.answers[:-1]))
            seen = record_inspection(office, tag, first)
        then = later(office, 5)
        told = WentThrough(
            tuple(replace(one, on=office.today + timedelta(days=days)) for days, one in uses),
            tuple(replace(one, on=office.today + timedelta(days=days)) for days, one in seas),
        )
        lent, by_hand = tags
        if all(one.outcome.severity >= Outcome.HOLD.severity for one in seen.verdict.by_purpose):
            with pytest.raises(Refused):
                lend(office, [lent], OUT, then.today)
            return
        lend(office, [lent], OUT, then.today)
        back = give_back(then, lent, OUT, told)
        check_no_milder(back, logged_by_hand(then, by_hand, told))

    holds()


def logged_by_hand(office: Office, tag: str, told: WentThrough) -> Judged:
    """The same uses and exposures, each logged as a deed of its own."""
    for use in told.uses or ():
        record_use(office, tag, use)
    for sea in told.exposures or ():
        record_exposure(office, tag, sea)
    return record_use(office, tag, NewUse(office.today, 0))


def check_no_milder(back: Judged, by_hand: Judged) -> None:
    """Outcomes, strength and the next look."""
    for one, other in zip(back.verdict.by_purpose, by_hand.verdict.by_purpose, strict=True):
        assert one.outcome.severity >= other.outcome.severity
    strengths = back.verdict.capacity.now_n, by_hand.verdict.capacity.now_n
    assert strengths[0] is None or (strengths[1] is not None and strengths[0] <= strengths[1])
    dues = back.verdict.next_due, by_hand.verdict.next_due
    assert dues[1] is None or (dues[0] is not None and dues[0] <= dues[1])


def test_the_trip_s_last_day_is_the_day_of_return_only_where_none_was_named(office: Office) -> None:
    fit_kit(office)
    member(office)
    trip = planned(office)
    sooner = office.today + timedelta(days=1)
    assert lend(office, ["SH-1"], OUT, sooner, "T-1")[0].due == sooner
    assert lend(office, ["SH-2"], OUT, trip="T-1")[0].due == trip.last_on

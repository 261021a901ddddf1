"""The cautionary cases of the sample: what a careful officer would say of each, and the reason that must stand."""

from datetime import timedelta

import pytest

from inspector.duties.judge_anew import judge_anew
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.tell_history import history_of
from inspector.gear.outcome import Outcome, Purpose

REASONS = {
    # thinned from inside behind a clean outside
    "BM-01": (Outcome.RETIRE, "wall-too-thin", ["2.2 mm", "“bottom”", "at least 4 mm", "80 % of the wall as new"]),
    # the receiver on the same road: towing yet, no pull
    "HR-01": (Outcome.HOLD, "wall-soon-too-thin", ["168 days", "at least 182 days", "short-term rate"]),
    # read two years ago: nothing is known of today
    "HR-02": (Outcome.HOLD, "wall-reading-due", ["722 days", "at most 84 days", "half the remaining life"]),
    "BM-02": (Outcome.HOLD, "wall-estimate-towing", ["must be at least"]),
    # no marking, no shackle
    "SH-02": (Outcome.RETIRE, "shackle-marking", ["cannot be read", "ASME B30.26"]),
    # worn past a tenth, and past the club's notice
    "SH-05": (Outcome.RETIRE, "shackle-body-worn-out", ["10.5 %", "less than 10 %", "17.0 mm against 19 mm"]),
    # a bolt where its pin should be
    "SH-12": (Outcome.HOLD, "shackle-pin-own", ["A bolt or the pin of another shackle", "EM 385-1-1"]),
    # a factor nobody knows
    "DS-03": (Outcome.HOLD, "factor-shackle", ["not known", "at least 5"]),
    # pulled beyond the plan and not looked at since
    "KS-02": (Outcome.HOLD, "event-answered", ["must be none", "inspection of all of it after the event"]),
    "SH-10": (Outcome.HOLD, "event-answered", ["must be none"]),
    # sun, age and rubbing take from the strength
    "KS-03": (Outcome.DERATE, "ageing-derates-fibre", ["8.2 %", "150 days in the sun"]),
    "KS-04": (Outcome.RETIRE, "cut-strap", ["Any cut, hole, tear", "1926.251"]),
    # stretched for good
    "KR-04": (Outcome.RETIRE, "stretched-badly-kinetic", ["10.6 %", "less than 10 %"]),
    "SS-03": (Outcome.RETIRE, "melted-rope", ["melted or scorched"]),
    "TS-03": (Outcome.RETIRE, "age-retires-fibre", ["10 years", "less than 10 years"]),
    # a pin worn in a step
    "HP-01": (Outcome.RETIRE, "pin-worn", ["6.9 %", "at most 6 %", "ISO 16855"]),
    "HP-05": (Outcome.HOLD, "hitch-pin-clip", ["The clip is missing"]),
    "WR-02": (Outcome.RETIRE, "wire-many-broken", ["5, must be less than 5", "ISO 4309"]),
    "TB-03": (Outcome.HOLD, "ball-in-coupler", ["1-7/8 in", "50 mm"]),
    "RP-05": (Outcome.HOLD, "weld-rust-line", ["a line of rust beside a weld"]),
    "WI-03": (Outcome.HOLD, "winch-brake", ["creeps or runs on"]),
    # second-hand, its life before the register unknown
    "TW-01": (Outcome.HOLD, "past-known", ["unknown", "an inspection of all of it by a competent person"]),
    "XX-01": (Outcome.HOLD, "rating-other", ["nowhere", "on the piece or its certificate"]),
}


@pytest.mark.parametrize(("tag", "case"), REASONS.items(), ids=list(REASONS))
def test_a_cautionary_case_comes_out_as_it_must_for_the_reason_that_it_must(
    sample: Office, tag: str, case: tuple[Outcome, str, list[str]]
) -> None:
    outcome, rule, said = case
    found = open_item(sample, tag)
    assert found.verdict.outcome is outcome
    reason = next(one for one in found.explanation.reasons if one.rule == rule)
    text = " ".join((reason.sentence, reason.value, reason.limit, reason.source, reason.release))
    for wanted in said:
        assert wanted in text


@pytest.mark.parametrize("tag", ["SH-01", "SH-03", "KS-01"])
def test_a_sound_piece_is_not_held_out_of_caution(sample: Office, tag: str) -> None:
    found = open_item(sample, tag)
    assert found.verdict.outcome is Outcome.FIT
    assert found.explanation.reasons == () and len(found.explanation.passes) > 20


def test_a_receiver_that_must_not_be_pulled_on_may_still_tow(sample: Office) -> None:
    by_purpose = {one.purpose: one.outcome for one in open_item(sample, "HR-01").verdict.by_purpose}
    assert by_purpose == {Purpose.KINETIC: Outcome.HOLD, Purpose.STATIC: Outcome.HOLD, Purpose.TOWING: Outcome.FIT}


def test_the_short_ton_and_the_tonne_are_told_apart(sample: Office) -> None:
    """SH-01 is marked 4.75 t with factor 6, SH-03 3.25 short tons with factor 5: 279 and 144.6 kN."""
    marked = {tag: open_item(sample, tag).verdict.capacity.as_marked_n for tag in ("SH-01", "SH-03")}
    assert marked["SH-01"] == pytest.approx(279e3, rel=2e-3)
    assert marked["SH-03"] == pytest.approx(144.6e3, rel=1e-3)


def test_what_was_struck_doubted_and_answered_stands_in_the_history_and_the_pieces_came_back(sample: Office) -> None:
    for tag, what in (("SH-04", "Entry struck"), ("KS-06", "Doubt"), ("BR-03", "Opinion")):
        assert open_item(sample, tag).verdict.outcome is Outcome.FIT
        assert what in {row.what for row in history_of(sample, tag)}
    assert any(row.what == "Made unusable" for row in history_of(sample, "KS-04"))
    said = [row.text for row in history_of(sample, "SH-04") if row.what == "Verdict"]
    assert any(text.startswith("Retire:") for text in said) and said[0].startswith("Fit:")


def test_nothing_fit_stays_fit_for_ever(sample: Office) -> None:
    """Two years later, with nothing done, no piece of the store may be used."""
    later = sample.at(sample.now + timedelta(days=800))
    judge_anew(later)
    for tag in ("SH-01", "KS-01", "BM-03", "HR-03", "WI-01", "DM-01"):
        assert open_item(later, tag).verdict.outcome.severity >= Outcome.HOLD.severity

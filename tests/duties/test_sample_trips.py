"""The sample's rigs, loans, checks, sheets and debriefs: what each is there to show."""

from datetime import timedelta

import pytest

from inspector.duties.check_kit import kit_check
from inspector.duties.keep_rigs import rig, rigs
from inspector.duties.lend import loans
from inspector.duties.look_up import open_item, where_is
from inspector.duties.office import Office
from inspector.duties.tell_history import history_of
from inspector.duties.work_rigs import TripPairs, pair_trip, work_kept_rig
from inspector.gear.outcome import Outcome
from inspector.gear.rig import Method
from inspector.gear.rig_result import RigOutcome

_CHECKED = {"SS-02": "soft_shackle", "SH-11": "bow_shackle", "TS-01": "tree_strap"}
REFS = tuple(f"RG-{number:02d}" for number in range(1, 8))


def bringing_out(found: TripPairs, method: str, bogged: str) -> dict[str, RigOutcome | None]:
    """By the vehicle that pulls."""
    return {one.pulling: one.outcome for one in found.lines if (one.method, one.bogged) == (method, bogged)}


def test_the_rigs_that_are_kept_are_these(sample: Office) -> None:
    assert tuple(one.ref for one in rigs(sample)) == REFS
    assert {one.rig.method for one in rigs(sample)} == set(Method)


OUTCOMES = {
    "RG-01": "sound", "RG-02": "caution", "RG-03": "caution", "RG-04": "sound", "RG-05": "sound", "RG-06": "never",
    "RG-07": "unsound",
}  # fmt: skip


@pytest.mark.parametrize("ref", REFS)
def test_a_kept_rig_comes_out_so_and_its_name_tells_the_pull_alone(sample: Office, ref: str) -> None:
    """What comes out may be another thing tomorrow; a name stands."""
    found = work_kept_rig(sample, ref)
    assert found.outcome.value == OUTCOMES[ref]
    assert not any(one.value in found.rig.name.casefold().split() for one in RigOutcome)
    assert found.weakest and found.stand_off_m > 0 and found.cautions


def test_the_rigs_show_a_doubled_line_a_redirect_and_a_bridle(sample: Office) -> None:
    """The winch stalls at 10,100 lb: 44.93 kN. A doubled line loads its block twice that; at 70 degrees 2 cos 35."""
    block = work_kept_rig(sample, "RG-02").link("SN-01")
    turned = work_kept_rig(sample, "RG-03").link("SN-01")
    assert block and block.force_n == pytest.approx(2 * 44.93e3, rel=1e-3)
    assert turned and turned.force_n == pytest.approx(1.6383 * 44.93e3, rel=1e-3)
    bridle = work_kept_rig(sample, "RG-04").link("BR-01")
    assert bridle and bridle.legs == 2


def test_the_rig_at_the_ball_is_refused_for_its_joint_whatever_its_strength(sample: Office) -> None:
    found = work_kept_rig(sample, "RG-06")
    (joint,) = (one for one in found.joints if one.outcome is RigOutcome.NEVER)
    assert (joint.how, {joint.one, joint.other}) == ("ball", {"KR-02", "TB-01"})
    assert joint.sums and "teaching" in rig(sample, "RG-06").rig.note.lower()


def test_a_winch_s_stall_is_told_where_the_club_knows_it(sample: Office) -> None:
    stalls = {
        tag: open_item(sample, tag).dossier.item.size("stall_pull") for tag in ("WI-01", "WI-02", "WI-03", "WI-04")
    }
    assert [tag for tag, stall in stalls.items() if stall is None] == ["WI-03"]
    for tag, stall in stalls.items():
        plate = open_item(sample, tag).dossier.item.rating.figure
        assert stall is None or (plate and 1.05 < stall.si / plate.si < 1.15)


def test_of_the_next_trip_s_vehicles_some_have_a_sound_rig_and_one_cannot_be_brought_out(sample: Office) -> None:
    found = pair_trip(sample, "next")
    assert bringing_out(found, "kinetic", "V-02") == {
        "V-01": RigOutcome.CAUTION,
        "V-04": RigOutcome.SOUND,
        "V-09": RigOutcome.SOUND,
    }
    assert bringing_out(found, "winch", "V-09") == {"V-04": RigOutcome.CAUTION}
    nobody = {*bringing_out(found, "kinetic", "V-01").values(), *bringing_out(found, "winch", "V-01").values()}
    assert nobody == {RigOutcome.UNSOUND}, "its points bear 4,000 kg"


def test_one_piece_is_out_and_one_is_overdue(sample: Office) -> None:
    assert [(one.tag, one.overdue_days(sample.today)) for one in loans(sample)] == [("DS-02", 9), ("SN-01", 0)]
    assert "9 days overdue" in where_is(sample, "DS-02")


def test_a_piece_that_came_back_without_a_word_was_held_until_somebody_had_looked(sample: Office) -> None:
    told = [(row.what, row.text) for row in reversed(history_of(sample, "DM-02"))]
    back = next(at for at, (what, text) in enumerate(told) if what == "Returned" and "nobody told its pulls" in text)
    after = [text for what, text in told[back:] if what == "Verdict"]
    assert after[0].startswith("Hold: Doubts voiced") and after[-1].startswith("Fit")


def test_the_near_miss_on_the_ridge_stands_on_every_piece_of_its_rig(sample: Office) -> None:
    for tag in ("RP-05", "SH-01", "KS-04", "SH-07", "RP-04"):
        said = [row.text for row in history_of(sample, tag) if row.what == "Use"]
        assert any("overload" in text and "Near miss: The strap lay over the edge" in text for text in said)
    assert open_item(sample, "RP-04").verdict.outcome is Outcome.FIT, "it was inspected since"


def test_what_was_told_of_the_ridge_weekend_bore_the_pulls_of_both_ends(sample: Office) -> None:
    pulls = [(use.facts.on, use.facts.pull_count) for use in open_item(sample, "RP-14").dossier.uses]
    ridge, shakedown = (sample.today - timedelta(days=121), 3), (sample.today - timedelta(days=2), 2)
    assert ridge in pulls and shakedown in pulls


def test_the_last_trip_was_checked_on_screen_and_by_a_sheet_that_came_back(sample: Office) -> None:
    with sample.book.reading() as page:
        made = {tag: page.dossier(page.item(tag), sample.kind(kind), sample.today) for tag, kind in _CHECKED.items()}
    sheets = {tag: one.inspections[-1].facts.sheet for tag, one in made.items()}
    assert sheets == {"SS-02": "", "SH-11": f"S-{sample.book.origin}-0001", "TS-01": f"S-{sample.book.origin}-0001"}
    assert {one.inspections[-1].facts.trip for one in made.values()} == {"T-04"}


def test_the_next_trip_s_sheet_is_printed_and_partly_checked(sample: Office) -> None:
    found = kit_check(sample, "next")
    assert found.sheets == (f"S-{sample.book.origin}-0002",)
    assert [one.tag for one in found.pieces if one.is_checked] == ["SH-04", "SH-09", "SS-05", "BR-01"]
    begun = found.piece("KS-03")
    assert begun and begun.made and {one.key for one in begun.open} == {"label_legible", "stitching"}

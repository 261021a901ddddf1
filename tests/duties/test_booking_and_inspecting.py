"""Stories: a piece comes in, is looked at, wears, and is judged."""

from datetime import UTC, date, datetime, timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.judge_anew import judge_anew
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.preview_verdict import preview_verdict
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.tell_history import history_of
from inspector.gear.inspection import InspectionKind
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Person
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.refused import Refused
from inspector.units import Dimension, read
from tests.duties.gear import HOLE, SHACKLE_READINGS, all_good, mount, shackle, size

WALLS = {"wall@top": "3.4 mm", "wall@bottom": "2.9 mm"}


def test_a_new_piece_is_held_until_a_competent_person_has_looked_at_it(office: Office) -> None:
    booked = book_in(office, shackle())
    assert booked.verdict.outcome is Outcome.HOLD
    looked = record_inspection(office, "SH-1", all_good(office, booked.dossier.kind, SHACKLE_READINGS))
    assert looked.verdict.outcome is Outcome.FIT
    assert looked.verdict.capacity.now_n == pytest.approx(4750 * 9.80665 * 5)
    assert looked.explanation.headline.startswith("Fit")
    assert open_item(office, "sh-1").explanation == looked.explanation


def test_a_figure_prints_as_the_officer_wrote_it(office: Office) -> None:
    booked = book_in(office, shackle())
    assert "7/8 in" in next(fact.text for fact in booked.explanation.piece if fact.label == "As new")
    assert list_gear(office).rows[0].marked == "WLL 4.75 t, factor 5"


def test_a_wall_eaten_from_inside_is_found_behind_a_clean_outside(office: Office) -> None:
    kind = book_in(office, mount()).dossier.kind
    record_exposure(office, "BM-1", NewExposure(date(2021, 1, 5), Weather.SALT, rinsed=False))
    found = record_inspection(office, "BM-1", all_good(office, kind, {**WALLS, **HOLE}))
    wall = found.verdict.wall
    assert wall is not None
    assert found.verdict.outcome is Outcome.RETIRE
    assert wall.required_m == pytest.approx(0.004)
    assert min(point.read_m for point in wall.history) == pytest.approx(0.0029)
    assert wall.long_term_m_per_year == pytest.approx(0.0021 / ((date(2026, 11, 25) - date(2020, 1, 1)).days / 365.25))
    governing = found.explanation.reasons[0]
    assert "2.7 mm" in governing.value and "2.9 mm" in governing.value
    assert governing.limit == "at least 4 mm (club setting: 80 % of the wall as new)"


def test_the_same_readings_in_inches_are_judged_the_same(office: Office) -> None:
    kind = book_in(office, mount("BM-1")).dossier.kind
    book_in(office, mount("BM-2"))
    metric = record_inspection(office, "BM-1", all_good(office, kind, {"wall@bottom": "4.572 mm", **HOLE}))
    inches = record_inspection(office, "BM-2", all_good(office, kind, {"wall@bottom": "0.18 in", **HOLE}))
    assert inches.verdict.by_purpose == metric.verdict.by_purpose
    assert inches.verdict.next_due == metric.verdict.next_due


def test_an_overload_holds_until_an_inspection_after_the_event(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS))
    held = record_use(office, "SH-1", NewUse(office.today, 1, Event.OVERLOAD))
    assert held.verdict.outcome is Outcome.HOLD
    after = replace(all_good(office, kind, SHACKLE_READINGS), kind=InspectionKind.AFTER_EVENT)
    assert record_inspection(office, "SH-1", after).verdict.outcome is Outcome.FIT


def test_a_member_may_find_a_fault_but_not_pass_a_piece(office: Office) -> None:
    member = add_person(office, Person("", "Mel Member", "Member"))
    kind = book_in(office, shackle()).dossier.kind
    passed = record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, by=member.id))
    assert passed.verdict.outcome is Outcome.HOLD
    found = record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, by=member.id, cracks="bad"))
    assert found.verdict.outcome is Outcome.RETIRE


def test_competence_ends_with_its_day_and_covers_only_its_scope(office: Office) -> None:
    held = (Competence("strap", date(2020, 1, 1)), Competence("shackle", date(2020, 1, 1), date(2026, 11, 24)))
    deputy = add_person(office, Person("", "Dee Deputy", "Deputy", held), "course certificate")
    kind = book_in(office, shackle()).dossier.kind
    seen = record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, by=deputy.id))
    assert seen.dossier.inspections[-1].facts.competent is False


def test_nobody_is_the_only_judge_of_his_own_gear(office: Office) -> None:
    kind = book_in(office, shackle(owner=office.officer.name)).dossier.kind
    seen = record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS))
    assert seen.verdict.outcome is Outcome.HOLD


def test_retirement_is_final_whatever_is_logged_afterwards(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    again = record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS))
    assert again.verdict.outcome is Outcome.RETIRE
    assert "final" in again.explanation.reasons[0].sentence


def test_a_preview_keeps_nothing_and_says_what_the_deed_would_say(office: Office) -> None:
    booked = book_in(office, mount())
    seen = all_good(office, booked.dossier.kind, {**WALLS, **HOLE})
    shown = preview_verdict(office, booked.dossier, seen)
    assert open_item(office, "BM-1").verdict.outcome is Outcome.HOLD
    done = record_inspection(office, "BM-1", seen)
    assert shown.explanation == done.explanation


def test_time_alone_puts_a_piece_on_hold_and_only_the_due_ones_are_judged_anew(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    book_in(office, shackle("SH-2"))
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS))
    evening = datetime(2027, 11, 26, 19, tzinfo=UTC)
    assert judge_anew(office.at(evening - timedelta(days=1))) == ()
    assert judge_anew(office.at(evening)) == ("SH-1",)
    assert open_item(office, "SH-1").verdict.outcome is Outcome.HOLD
    assert judge_anew(office.at(evening)) == ()


def test_history_tells_everything_newest_first(office: Office) -> None:
    kind = book_in(office, mount()).dossier.kind
    record_exposure(office, "BM-1", NewExposure(date(2026, 11, 24), Weather.SALT))
    record_inspection(office, "BM-1", all_good(office, kind, {**WALLS, **HOLE}, outside_rust="slight"))
    rows = history_of(office, "BM-1")
    assert {row.what for row in rows} == {"Verdict", "Inspection", "Exposure"}
    assert [row.on for row in rows] == sorted((row.on for row in rows), reverse=True)
    inspection = next(row for row in rows if row.what == "Inspection")
    assert "2.9 mm" in inspection.text and "slight" in inspection.text and inspection.by == "Ada Officer"


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"tag": ""}, "tag"),
        ({"tag": " SH"}, "tag"),
        ({"tag": "x" * 40}, "tag"),
        ({"kind": "bowshackle"}, "kind"),
        ({"sizes": ()}, "Body diameter, Pin diameter"),
        ({"sizes": (size("bow_diameter", "-1 mm"), size("pin_diameter", "22 mm"))}, "Body diameter"),
        ({"sizes": (size("length", "9 m"),)}, "length"),
        ({"made_on": date(2030, 1, 1)}, "made on"),
        ({"made_on": date(2026, 1, 2), "in_service_on": date(2026, 1, 1)}, "in service since"),
    ],
)
def test_a_booking_that_does_not_hold_together_is_refused_by_field(
    office: Office, change: dict[str, object], field: str
) -> None:
    with pytest.raises(Refused) as refusal:
        book_in(office, replace(shackle(), **change))
    assert refusal.value.field == field
    assert list_gear(office).count == 0


def test_a_rating_of_the_wrong_sort_or_size_is_refused(office: Office) -> None:
    good = shackle().rating
    for rating in (
        replace(good, basis=Basis.TOWED_MASS),
        replace(good, figure=read("0 t", Dimension.FORCE, field="r")),
        replace(good, design_factor=0.5),
    ):
        with pytest.raises(Refused):
            book_in(office, replace(shackle(), rating=rating))


def test_a_tag_is_never_used_twice(office: Office) -> None:
    book_in(office, shackle())
    with pytest.raises(Refused, match="already"):
        book_in(office, shackle("sh-1"))


def test_an_inspection_that_cannot_be_is_refused_and_nothing_is_kept(office: Office) -> None:
    kind = book_in(office, mount()).dossier.kind
    good = all_good(office, kind, {**WALLS, **HOLE})
    cases = [
        replace(good, on=date(2027, 1, 1)),
        replace(good, on=date(2020, 1, 1)),
        replace(good, by="nobody we know"),
        replace(good, answers=(), readings=()),
        replace(good, answers=(replace(good.answers[0], check="no_such_check"),)),
        all_good(office, kind, {"no_such_measure": "2 mm"}),
        all_good(office, kind, {"wall@inside": "2 mm"}),
        all_good(office, kind, {"wall": "2 mm"}),
        all_good(office, kind, {"wall@top": "-2 mm"}),
        all_good(office, kind, {}, marking_legible="slight", bent="slight"),
    ]
    for seen in cases:
        with pytest.raises(Refused) as refusal:
            record_inspection(office, "BM-1", seen)
        assert refusal.value.field and refusal.value.what_to_do
    assert open_item(office, "BM-1").dossier.inspections == ()


def test_history_keeps_ids_and_only_people_of_the_register(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, by="Ada Officer"))
    record_use(office, "SH-1", NewUse(office.today, 1, by="Ada Officer"))
    record_exposure(office, "SH-1", NewExposure(office.today, Weather.MUD))
    dossier = open_item(office, "SH-1").dossier
    assert {dossier.inspections[0].facts.by, dossier.uses[0].facts.by, dossier.exposures[0].facts.by} == {
        office.officer.id
    }
    assert {row.by for row in history_of(office, "SH-1") if row.what != "Verdict"} == {"Ada Officer"}
    with pytest.raises(Refused, match="Nobody called"):
        record_use(office, "SH-1", NewUse(office.today, 1, by="Somebody Else"))


def test_an_unknown_tag_is_refused(office: Office) -> None:
    with pytest.raises(Refused, match="No piece has the tag"):
        open_item(office, "ZZ-9")


@pytest.mark.parametrize("pulls", [-1, 5000])
def test_pulls_and_days_that_cannot_be_are_refused(office: Office, pulls: int) -> None:
    book_in(office, shackle())
    with pytest.raises(Refused):
        record_use(office, "SH-1", NewUse(office.today, pulls))
    with pytest.raises(Refused):
        record_use(office, "SH-1", NewUse(office.today + timedelta(days=1), 1))
    with pytest.raises(Refused):
        record_exposure(office, "SH-1", NewExposure(office.today, Weather.MUD, pulls))


def test_the_list_is_searched_by_every_word_and_sorted(office: Office) -> None:
    kind = book_in(office, shackle("SH-1")).dossier.kind
    book_in(office, replace(shackle("SH-2"), place="Hook 50%_a"))
    book_in(office, mount("BM-1"))
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS))
    assert [row.tag for row in list_gear(office, "bow sh-").rows] == ["SH-1", "SH-2"]
    assert [row.tag for row in list_gear(office, "50%_A").rows] == ["SH-2"]
    assert list_gear(office, "%%").rows == ()
    assert [row.tag for row in list_gear(office, order="worst").rows] == ["BM-1", "SH-2", "SH-1"]
    assert [row.tag for row in list_gear(office, outcome=Outcome.FIT).rows] == ["SH-1"]
    assert list_gear(office, limit=1).count == 3
    with pytest.raises(Refused):
        list_gear(office, order="colour")

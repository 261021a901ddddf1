"""Holes in the deeds, each closed: late sheets, spellings, slips of the key, and what was destroyed."""

from collections.abc import Callable
from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.give_opinion import answer_findings
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.gear.inspection import Answer, InspectionKind
from inspector.gear.item import Provenance, Rating
from inspector.gear.kind import Basis, Grade
from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.use import NewExposure, NewUse, Weather
from inspector.refused import Refused
from inspector.register.rows import new_id
from inspector.units import Dimension, read
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good, shackle, strap
from tests.duties.test_opinions import add

THIN = {"bow_diameter": "16 mm", "pin_diameter": "22.2 mm"}


def test_a_bad_sheet_entered_late_retires_as_it_would_have_on_its_day(office: Office) -> None:
    early = office.at(office.now - timedelta(days=30))
    kind = book_in(early, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS))
    late = record_inspection(office, "SH-1", all_good(office, kind, THIN, on=office.today - timedelta(days=20)))
    assert late.verdict.outcome is Outcome.RETIRE
    assert open_item(office, "SH-1").verdict.outcome is Outcome.RETIRE


def test_two_wrong_entries_are_struck_one_after_the_other(office: Office) -> None:
    early = office.at(office.now - timedelta(days=30))
    kind = book_in(early, shackle()).dossier.kind
    for days in (20, 10):
        then = office.at(office.now - timedelta(days=days))
        record_inspection(then, "SH-1", all_good(then, kind, THIN))
    add(early, "Bo Second")
    refs = [row.ref for row in history_of(office, "SH-1") if row.what == "Inspection"]
    assert strike_entry(office, "SH-1", refs[0], "Bo Second", "wrong piece").verdict.outcome is Outcome.RETIRE
    assert strike_entry(office, "SH-1", refs[1], "Bo Second", "wrong piece").verdict.outcome is Outcome.HOLD


@pytest.mark.parametrize("owner", ["ada officer", "Ada  Officer", " Ada Officer"])
def test_another_spelling_makes_nobody_the_judge_of_his_own_gear(office: Office, owner: str) -> None:
    kind = book_in(office, shackle(owner=owner)).dossier.kind
    assert record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS)).verdict.outcome is Outcome.HOLD


def test_neither_the_second_name_nor_an_earlier_seer_gives_the_opinion(office: Office) -> None:
    kind = book_in(office, strap()).dossier.kind
    bo = add(office, "Bo Second")
    half = replace(all_good(office, kind, STRAP_READINGS, label_legible="slight"), second=bo.name)
    record_inspection(office, "KS-1", half)
    member = add(office, "Di Member", competent=False)
    repeated = replace(half, by=member.id, second="", answers=(Answer("label_legible", Grade.SLIGHT),), readings=())
    record_inspection(office, "KS-1", replace(repeated, kind=InspectionKind.BEFORE_USE))
    for name in ("Ada Officer", "Bo Second"):
        with pytest.raises(Refused, match="made an inspection"):
            answer_findings(office, "KS-1", ["label-worn"], "stamped on the sleeve", name)


def test_a_used_piece_is_not_as_old_as_its_purchase(office: Office) -> None:
    bought = date(2026, 10, 1)
    used = replace(strap(), provenance=Provenance.SECOND_HAND, in_service_on=bought)
    found = book_in(office, used)
    assert next(one for one in found.verdict.findings if one.rule == "age-retires-fibre").value is None
    assert found.verdict.capacity.as_marked_n is not None


def test_a_figure_without_a_meaning_or_a_place_is_refused(office: Office) -> None:
    figure = read("4.75 t", Dimension.FORCE, field="r")
    with pytest.raises(Refused, match="not what it is"):
        book_in(office, replace(shackle(), rating=Rating(Basis.UNRATED, figure, None, "piece")))
    with pytest.raises(Refused, match="where the rating stands"):
        book_in(office, replace(shackle(), rating=Rating(Basis.WLL, figure, 5.0, "")))
    with pytest.raises(Refused, match="never kept for road towing"):
        book_in(office, replace(shackle(), kept_for=(Purpose.TOWING,)))


@pytest.mark.parametrize("typed", ["189 mm", "29 mm", "0 mm", "0.5 mm"])
def test_a_reading_that_cannot_be_is_refused_and_nothing_is_kept(office: Office, typed: str) -> None:
    kind = book_in(office, shackle()).dossier.kind
    with pytest.raises(Refused, match="cannot be"):
        record_inspection(office, "SH-1", all_good(office, kind, {"bow_diameter": typed, "pin_diameter": "22 mm"}))
    assert open_item(office, "SH-1").dossier.inspections == ()


def test_a_check_graded_twice_is_refused(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    facts = all_good(office, kind, SHACKLE_READINGS)
    twice = replace(facts, answers=(*facts.answers, Answer("cracks", Grade.BAD)))
    with pytest.raises(Refused, match="graded twice"):
        record_inspection(office, "SH-1", twice)


def test_nothing_new_is_logged_of_what_was_destroyed(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, THIN))
    destroy_item(office, "SH-1", "bow cut through")
    deeds: tuple[Callable[[], object], ...] = (
        lambda: record_use(office, "SH-1", NewUse(office.today, 1)),
        lambda: record_exposure(office, "SH-1", NewExposure(office.today, Weather.SALT)),
        lambda: record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS)),
    )
    for deed in deeds:
        with pytest.raises(Refused, match="made unusable"):
            deed()


def test_a_temperature_belongs_to_a_day_of_heat(office: Office) -> None:
    book_in(office, strap())
    heat = read("95 °C", Dimension.TEMPERATURE, field="h")
    with pytest.raises(Refused, match="day of heat"):
        record_exposure(office, "KS-1", NewExposure(office.today, Weather.SALT, hottest=heat))


def test_ids_made_one_after_the_other_sort_in_that_order() -> None:
    made = [new_id() for _ in range(20_000)]
    assert made == sorted(made) and len(set(made)) == len(made)

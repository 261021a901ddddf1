"""How old a new strap is, its label or whoever bought it tells; the day it was booked in does not."""

from datetime import timedelta

from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.gear.outcome import Outcome
from tests.duties.gear import all_good, strap

READ = {"length": "9 m"}


def test_a_new_strap_without_any_day_is_held_until_its_age_is_known(office: Office) -> None:
    booked = book_in(office, replace(strap(), in_service_on=None, made_on=None))
    judged = record_inspection(office, "KS-1", all_good(office, booked.dossier.kind, READ))
    assert judged.verdict.outcome is Outcome.HOLD
    held = {one.rule for one in judged.verdict.findings if one.outcome is Outcome.HOLD}
    assert "age-retires-fibre" in held
    (words,) = {one.came_from for one in judged.verdict.findings if one.rule == "age-retires-fibre"}
    assert "0 days" not in words


def test_a_strap_that_came_new_today_says_so_and_is_fit(office: Office) -> None:
    booked = book_in(office, replace(strap(), in_service_on=office.today))
    judged = record_inspection(office, "KS-1", all_good(office, booked.dossier.kind, READ))
    assert judged.verdict.outcome is Outcome.FIT


def test_an_old_day_retires_it_as_before(office: Office) -> None:
    booked = book_in(office, replace(strap(), in_service_on=office.today - timedelta(days=3660)))
    assert booked.verdict.outcome is Outcome.RETIRE

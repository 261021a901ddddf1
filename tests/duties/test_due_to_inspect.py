"""What is to be inspected now: due, overdue or never seen, as far as it is at hand."""

from datetime import date, timedelta

from inspector.duties.due_to_inspect import due_to_inspect
from inspector.duties.lend import lend
from inspector.duties.look_up import list_gear
from inspector.duties.office import Office
from inspector.duties.whereabouts import report_missing
from inspector.gear.outcome import Outcome


def test_what_is_overdue_comes_first_and_nothing_that_is_not_due(sample: Office) -> None:
    tags = due_to_inspect(sample)
    due = {row.tag: row.next_due for row in list_gear(sample).rows if row.outcome is not Outcome.RETIRE}

    assert tags
    assert all((due[tag] or date.min) <= sample.today + timedelta(days=30) for tag in tags if due.get(tag))


def test_a_missing_piece_is_not_asked_for(sample: Office) -> None:
    tag = next(one for one in due_to_inspect(sample) if one.startswith("SH"))

    report_missing(sample, tag, "nobody knows", "not on its hook")

    assert tag not in due_to_inspect(sample)


def test_what_is_lent_is_not_at_hand(sample: Office) -> None:
    fit = [row.tag for row in list_gear(sample, outcome=Outcome.FIT).rows]
    tag = next(one for one in due_to_inspect(sample) if one in fit)

    lend(sample, (tag,), sample.officer.name, sample.today + timedelta(days=3))

    assert tag not in due_to_inspect(sample)

"""What must hold of the calendar in any state of a register."""

from datetime import date, timedelta

from inspector.duties.due_days import has_left, is_lost
from inspector.duties.office import Office
from inspector.duties.what_falls_due import what_falls_due
from inspector.gear.falls_due import Due
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Verdict


def assert_nothing_is_absent(office: Office, days: int) -> int:
    """Every day that a stored verdict names up to then stands in the calendar. Returns how many were looked at."""
    last, looked = office.today + timedelta(days=days), 0
    lines = what_falls_due(office, last)
    with office.book.reading() as page:
        items = page.every_item()
        where = page.whereabouts(items)
        verdicts = {one.id: page.latest_verdict(one.id)[0] for one in items}
        out = {one.item.tag: one.lent.facts.due for one in page.out() if not where[one.item.id].where.is_gone}
    for item in items:
        found = {one.what: one.on for one in lines if one.about == item.tag and one.what.is_of_piece}
        if has_left(where[item.id]):
            assert found == {}, item.tag
            continue
        assert (Due.MISSING in found) == is_lost(where[item.id]), item.tag
        retired = verdicts[item.id].outcome is Outcome.RETIRE
        assert (Due.DESTRUCTION in found) == retired, item.tag
        looks = {Due.FIRST_INSPECTION, Due.INSPECTION, Due.READING, Due.WALL, Due.VERDICT}
        if is_lost(where[item.id]) or retired:
            assert not looks & set(found), item.tag
            continue
        for what, day in _named(verdicts[item.id]).items():
            if day and day <= last:
                looked += 1
                assert found.get(what) == day or (what is Due.INSPECTION and Due.FIRST_INSPECTION in found), item.tag
        if item.tag in out and (out[item.tag] or last) <= last:
            assert Due.LOAN in found, item.tag
    return looked


def _named(verdict: Verdict) -> dict[Due, date | None]:
    """The days that a verdict names, read from it here by itself."""
    wall = verdict.wall
    return {
        Due.INSPECTION: verdict.next_inspection_due,
        Due.READING: wall.next_reading_due if wall else None,
        Due.WALL: wall.reaches_required_on if wall else None,
        Due.VERDICT: verdict.holds_until,
    }

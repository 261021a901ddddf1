"""What must hold of the first page in any state of a register, read here by itself."""

from inspector.duties.due_days import has_left, is_lost
from inspector.duties.office import Office
from inspector.duties.what_needs_me import what_needs_me
from inspector.gear.falls_due import Due
from inspector.gear.outcome import Outcome


def assert_every_hold_is_told(office: Office) -> int:
    """Every piece on hold, missing or retired that the club has or ought to have appears. Returns how many are held."""
    needs = what_needs_me(office)
    with office.book.reading() as page:
        items = page.every_item()
        where = page.whereabouts(items)
        outcomes = {one.id: page.latest_verdict(one.id)[0].outcome for one in items}
        kept = {one.tag for one in items if page.open_quarantines(one) and not has_left(where[one.id])}
    here = [one for one in items if not has_left(where[one.id])]
    lost = {one.tag for one in here if is_lost(where[one.id])}
    held = {one.tag for one in here if outcomes[one.id] is Outcome.HOLD} - lost
    assert {one.tag for one in needs.held} == held
    assert {one.due.about for one in needs.late if one.due.what is Due.MISSING} == lost
    assert {one.tag for one in needs.retired} == {one.tag for one in here if outcomes[one.id] is Outcome.RETIRE}
    assert kept <= {tag for one in needs.incidents for tag in one.pieces}
    if held or lost or needs.retired:
        assert not needs.is_quiet
    return len(held)

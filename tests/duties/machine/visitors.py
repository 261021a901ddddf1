"""Deeds of gear that is somebody else's: it comes along on one trip, and again on another."""

from hypothesis import strategies as st
from hypothesis.stateful import rule

from inspector.duties.elsewhere import away
from inspector.duties.look_up import trips
from inspector.duties.visit import visit, visit_again
from inspector.gear.outcome import Outcome
from tests.duties.machine.club import NEW, VISITOR
from tests.duties.machine.desk import Desk
from tests.duties.machine.pieces import ANY

REFS = st.sampled_from(("T-1", "T-1", "T-2"))


class Visitors(Desk):
    """A member's own piece comes along."""

    @rule(ref=REFS)
    def come_along(self, ref: str) -> None:
        """It is held until somebody has inspected it, and stays from every other trip."""
        if self.do("visit", lambda office: visit(office, ref, NEW[VISITOR])):
            assert self.stood[VISITOR].severity >= Outcome.HOLD.severity
            self.goes_on_no_other(VISITOR, ref)

    @rule(tag=ANY, ref=REFS)
    def come_again(self, tag: str, ref: str) -> None:
        """Only what came along before comes again: never what is retired, closed, evidence or out on loan."""
        before = self.stood.get(VISITOR)
        tag = self.rather([VISITOR], tag)
        if self.do("visit again", lambda office: visit_again(office, ref, tag)):
            assert before is not Outcome.RETIRE and tag not in self.lent and not self.evidence.get(tag)
            assert self.gone.pop(tag, None) is None or tag not in self.closed
            assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} came again and is {self.stood[tag]}"
            self.goes_on_no_other(tag, ref)

    def goes_on_no_other(self, tag: str, ref: str) -> None:
        """Every trip that is not over, but that one, is told that it stays away."""
        with self.office.book.reading() as page:
            for one in trips(self.office):
                if one.ref != ref and one.last_on >= self.office.today:
                    assert [each.tag for each in away(self.office, page, one, [tag])] == [tag]

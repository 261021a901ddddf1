"""Work on pieces, and what is written down of them anew."""

from hypothesis import strategies as st
from hypothesis.stateful import rule

from inspector.duties import change_item
from inspector.duties.repair_item import repair_item
from inspector.duties.value_gear import read_worth
from inspector.gear.item import Rating, SizeAsNew
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome
from inspector.gear.repair import NewRepair, Work
from inspector.units import Dimension, read
from tests.duties.machine.club import MEMBER
from tests.duties.machine.desk import Desk
from tests.duties.machine.pieces import ANY, JUDGES

PIN = SizeAsNew("pin_diameter", read("22 mm", Dimension.LENGTH, field="pin"))
BOLTS = SizeAsNew("bolt_count", read("4", Dimension.COUNT, field="bolts"))
MARKED = {
    "low": Rating(Basis.WLL, read("2 t", Dimension.FORCE, field="r"), 5.0, "piece"),
    "high": Rating(Basis.WLL, read("9.5 t", Dimension.FORCE, field="r"), 6.0, "piece"),
    "mbs": Rating(Basis.MBS, read("7000 kg", Dimension.FORCE, field="r"), None, "certificate"),
}


class Repairs(Desk):
    """Repairs and parts put in."""

    @rule(tag=ANY, work=st.sampled_from((*[Work.PIN_AND_BOW] * 4, *[Work.CLEANED] * 4, *Work)), own=st.booleans())
    def repair(self, tag: str, work: Work, own: bool) -> None:
        """A piece is repaired, and held until somebody has inspected it: never a retired one, never evidence."""
        tag = self.rather(self.at_hand(), tag)
        was = self.stood.get(tag)
        sizes = {Work.PIN_AND_BOW: (PIN,), Work.BOLTS: (BOLTS,)}.get(work, ())
        part = {Work.PIN_AND_BOW: "pin 22 mm", Work.BOLTS: "M14 bolts"}.get(work, "a part")
        facts = NewRepair(self.office.today, work, "a smith", "", part, maker="QVO", own=own, sizes=sizes)
        if self.do("repair", lambda office: repair_item(office, tag, facts)):
            assert was is not Outcome.RETIRE and not self.evidence.get(tag), f"{tag} was repaired"
            self.unseen(tag)


class Labels(Desk):
    """Tags, labels, owners, values and notes: none of them makes a piece milder by itself."""

    @rule(tag=ANY, to=st.sampled_from(("A", "B", "")))
    def retag(self, tag: str, to: str) -> None:
        """A piece gets another tag and stays the same piece; a tag is never given twice."""
        new = f"{tag}{to}"
        if self._change(
            tag, "retag", lambda: self.do("retag", lambda office: change_item.retag(office, tag, new, "worn"))
        ):
            assert not self.evidence.get(tag), f"{tag} is evidence and got another tag"
            self.called[new] = tag

    @rule(tag=ANY)
    def label_lost(self, tag: str) -> None:
        """A rating cannot be read any more."""
        self._change(
            tag, "label lost", lambda: self.do("label lost", lambda office: change_item.label_lost(office, tag, "torn"))
        )

    @rule(tag=ANY, marked=st.sampled_from(sorted(MARKED)), by=JUDGES, second=st.sampled_from(("", MEMBER, "Bo Rigger")))
    def label_anew(self, tag: str, marked: str, by: str, second: str) -> None:
        """A rating is read anew, and held until somebody has inspected the piece."""
        tag = self.rather([one for one in self.at_hand() if one.startswith("SH")], tag)
        if self.do(
            "label anew", lambda office: change_item.label_anew(office, tag, MARKED[marked], "cleaned", by, second)
        ):
            self.unseen(tag)

    @rule(tag=ANY, owner=st.sampled_from((MEMBER, "Club", "Bo Rigger")), second=st.sampled_from(("", "Bo Rigger")))
    def owner(self, tag: str, owner: str, second: str) -> None:
        """A piece is somebody else's."""
        self._change(
            tag,
            "change owner",
            lambda: self.do(
                "change owner", lambda office: change_item.change_owner(office, tag, owner, "bought", second=second)
            ),
        )

    @rule(tag=ANY, worth=st.sampled_from(("120 EUR", "20 EUR")), note=st.sampled_from(("blue bag", "red bag")))
    def value_and_note(self, tag: str, worth: str, note: str) -> None:
        """What it is worth, and what is to be remembered."""
        self._change(
            tag,
            "value",
            lambda: self.do("value", lambda office: change_item.change_value(office, tag, read_worth(worth), "asked")),
        )
        self._change(
            tag, "note", lambda: self.do("change note", lambda office: change_item.change_note(office, tag, note))
        )

    def _change(self, tag: str, name: str, change: object) -> bool:
        was = self.stood.get(tag)
        done = change()  # type: ignore[operator]
        if done and was:
            assert self.stood[tag].severity >= was.severity, f"{name} made {tag} milder: {was}, {self.stood[tag]}"
        return bool(done)

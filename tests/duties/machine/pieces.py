"""Deeds with one piece: booked, inspected, used, exposed, doubted, answered, struck, destroyed."""

from datetime import timedelta
from functools import partial

from hypothesis import strategies as st
from hypothesis.stateful import rule
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.give_opinion import answer_findings, doubt
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.preview_verdict import leave_preview
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.gear.inspection import FirstValue, NewInspection
from inspector.gear.judged import Judged
from inspector.gear.kind import Grade
from inspector.gear.outcome import Outcome
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.rulebook.opinions import may_be_answered
from tests.duties.gear import all_good
from tests.duties.machine.club import MEMBER, NEW, OFFICER, SECOND, SOUND, TAGS
from tests.duties.machine.desk import Desk

ANY = st.sampled_from(TAGS)
PEOPLE = st.sampled_from((OFFICER, SECOND, MEMBER, OFFICER, SECOND, MEMBER, "Nobody Known"))
JUDGES = st.sampled_from((OFFICER, SECOND))
AGO = st.sampled_from((0, 0, 0, 1, 40))
WORN = st.sampled_from((1.0, 1.0, 0.95, 0.91, 0.7))
GRADES = st.sampled_from((Grade.BAD, Grade.SLIGHT, Grade.NOT_SEEN))


class Pieces(Desk):
    """The deeds of one piece."""

    @rule(tag=ANY)
    def book_in(self, tag: str) -> None:
        """A piece comes into the register; a tag is never used twice."""
        self.do("book in", lambda office: book_in(office, NEW[tag]))

    @rule(tag=ANY, by=JUDGES, ago=AGO)
    def inspect_sound(self, tag: str, by: str, ago: int) -> None:
        """All good, every measure as new."""
        self.do("inspect", lambda office: record_inspection(office, tag, seen(office, tag, by, ago, 1.0)))

    @rule(by=JUDGES)
    def inspect_all(self, by: str) -> None:
        """An evening on which everything is looked at and found good, and what may go again goes."""
        for tag in sorted(self.stood):
            self.do("inspect", partial(sound, tag=tag, by=by))

    @rule(tag=ANY, by=PEOPLE, ago=AGO, ratio=WORN, at=st.integers(0, 9), grade=GRADES)
    def inspect_faulty(self, tag: str, by: str, ago: int, ratio: float, at: int, grade: Grade) -> None:
        """One check with a fault, and what was measured less than as new."""

        def inspect(office: Office) -> Judged:
            facts = seen(office, tag, by, ago, ratio)
            at_check = at % len(facts.answers)
            answers = [
                replace(one, grade=grade) if place == at_check else one for place, one in enumerate(facts.answers)
            ]
            return record_inspection(office, tag, replace(facts, answers=tuple(answers)))

        self.do("inspect", inspect)

    @rule(tag=ANY)
    def leave_inspection(self, tag: str) -> None:
        """An inspection is left unwritten after a preview had held the piece."""
        first = (FirstValue("bow_diameter", "", "15 mm", Outcome.HOLD),)
        self.do("leave inspection", lambda office: leave_preview(office, tag, first), lambda _: 1)

    @rule(tag=ANY, by=PEOPLE, ago=AGO, pulls=st.sampled_from((0, 1, 9, -1)), event=st.sampled_from(Event))
    def use(self, tag: str, by: str, ago: int, pulls: int, event: Event) -> None:
        """Pulls are logged."""
        self.do("use", lambda office: record_use(office, tag, NewUse(office.today - timedelta(ago), pulls, event, by)))

    @rule(tag=ANY, by=PEOPLE, days=st.sampled_from((1, 30, 0)), weather=st.sampled_from(Weather))
    def expose(self, tag: str, by: str, days: int, weather: Weather) -> None:
        """Weather is logged."""
        self.do(
            "expose", lambda office: record_exposure(office, tag, NewExposure(office.today, weather, days, None, by))
        )

    @rule(tag=ANY, by=PEOPLE)
    def doubt(self, tag: str, by: str) -> None:
        """Somebody doubts a piece."""
        self.do("doubt", lambda office: doubt(office, tag, "it creaked", by))

    @rule(tag=ANY, by=JUDGES, other=JUDGES, at=st.integers(0, 9))
    def slight_fault_answered(self, tag: str, by: str, other: str, at: int) -> None:
        """One sees a slight fault, and another has an opinion of it."""
        self.inspect_faulty(tag, by, 0, 1.0, at, Grade.SLIGHT)
        self.answer(tag, other)

    @rule(tag=ANY, by=PEOPLE)
    def answer(self, tag: str, by: str) -> None:
        """A second person answers all that may be answered."""
        tag = self.rather([one for one, outcome in self.stood.items() if outcome is Outcome.HOLD], tag)

        def all_slight(office: Office) -> Judged:
            found = open_item(office, tag).verdict.findings
            slight = [one.rule for one in found if may_be_answered(one, office.rules)]
            return answer_findings(office, tag, slight or ["overdue"], "no wear there", by)

        self.do("answer", all_slight)

    @rule(tag=ANY, by=JUDGES, second=PEOPLE, at=st.integers(0, 3))
    def strike(self, tag: str, by: str, second: str, at: int) -> None:
        """Two strike one of the newest entries."""

        def newest(office: Office) -> Judged:
            refs = [row.ref for row in history_of(office, tag) if row.ref]
            return strike_entry(office, tag, refs[at % len(refs)] if refs else "abcdef", second, "wrong tag", by)

        self.do("strike", newest)

    @rule(tag=ANY, witness=st.sampled_from(("", MEMBER)))
    def destroy(self, tag: str, witness: str) -> None:
        """A piece is made unusable; never one that is not retired, never evidence."""
        tag = self.rather(self.retired(), tag)
        was = self.stood.get(tag)
        if self.do("destroy", lambda office: destroy_item(office, tag, "cut in two", witness=witness)):
            assert was is Outcome.RETIRE and not self.evidence.get(tag), f"{tag} was {was}, {self.evidence.get(tag)}"
            assert tag not in self.gone, f"{tag} was destroyed while nobody had it"
            self.destroyed.add(tag)
            self.close(tag)


def sound(office: Office, tag: str, by: str) -> Judged:
    """A piece is looked at today and found good."""
    return record_inspection(office, tag, seen(office, tag, by, 0, 1.0))


def seen(office: Office, tag: str, by: str, ago: int, ratio: float) -> NewInspection:
    """An inspection with every measure at a share of its size as new."""
    kind = office.kind(NEW[tag].kind)
    counted = {"bolts_sound"}
    readings = {
        place: typed if place in counted else f"{float(typed.split()[0]) * ratio:.2f} {typed.split()[1]}"
        for place, typed in SOUND[tag[:2]].items()
    }
    return all_good(office, kind, readings, office.today - timedelta(ago), by)

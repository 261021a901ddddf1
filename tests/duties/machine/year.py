"""Deeds of the officer's year: whereabouts, evidence, repairs, counts and people, a group a class."""

from dataclasses import replace
from datetime import timedelta

from hypothesis import strategies as st
from hypothesis.stateful import invariant, rule

from inspector.duties.add_people import add_person
from inspector.duties.look_up import people
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Person
from inspector.gear.repair import Work
from inspector.gear.stock_take import Counted
from inspector.gear.whereabouts import WRITTEN, Where
from tests.duties.machine import register_as_such as register
from tests.duties.machine.club import MEMBER, SECOND
from tests.duties.machine.desk import Desk
from tests.duties.machine.pieces import ANY

INCIDENTS = st.sampled_from(("I-1", "I-2"))
COUNTS = st.sampled_from(("C-1", "C-2"))


class Whereabouts(Desk):
    """Pieces go missing, are sold or given back, and turn up again."""

    @rule(tag=ANY, where=st.sampled_from(WRITTEN))
    def move(self, tag: str, where: Where) -> None:
        """Where a piece is is written down: never that evidence is sold."""
        if self.do(f"move: {where}", lambda office: register.move(office, tag, where)):
            assert not self.evidence.get(tag) and self.gone.get(tag) is not Where.SOLD, f"{tag} was moved"
            self.gone.pop(tag, None)
            if where.is_gone:
                self.gone[tag] = where
            if where.is_closed:
                self.close(tag)

    @rule(tag=ANY)
    def find_again(self, tag: str) -> None:
        """What was gone is here again, and is held until somebody has inspected it."""
        tag = self.rather([one for one, where in self.gone.items() if not where.is_closed], tag)
        if self.do("find again", lambda office: register.find(office, tag)):
            assert self.gone.pop(tag).is_closed is False
            assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} was found and is {self.stood[tag]}"


class Evidence(Desk):
    """Pieces are kept as found and let go by two."""

    def __init__(self) -> None:
        super().__init__()
        self.as_found: dict[str, dict[str, int]] = {}

    @rule(tag=ANY, incident=INCIDENTS)
    def quarantine(self, tag: str, incident: str) -> None:
        """A piece is kept as found, and held."""
        if self.do("quarantine", lambda office: register.quarantine(office, tag, incident)):
            self.evidence.setdefault(tag, set()).add(incident)
            self.as_found.setdefault(tag, self.held(tag))

    @rule(tag=ANY, incident=INCIDENTS)
    def release(self, tag: str, incident: str) -> None:
        """Two let a piece go; it stays held until somebody has inspected it."""
        tag = self.rather([one for one, kept in self.evidence.items() if incident in kept], tag)
        if self.do("release", lambda office: register.release(office, tag, incident, self.person(SECOND).id)):
            self.evidence[tag].discard(incident)
            if not self.evidence[tag]:
                del self.as_found[tag]
            assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} was let go and is {self.stood[tag]}"

    def person(self, name: str) -> Person:
        """A person by name."""
        return next(one for one in people(self.office) if one.name == name)

    @invariant()
    def evidence_stays_as_it_was_found(self) -> None:
        """It is held, and is not lent, fitted, repaired, changed or destroyed; a loan that is out may come back."""
        for tag, then in self.as_found.items():
            now = self.held(tag)
            assert now | {"custody": 0} == then | {"custody": 0}, f"{tag} is evidence: {then} became {now}"
            assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} is evidence and is {self.stood[tag]}"


class Repairs(Desk):
    """Work on pieces."""

    @rule(tag=ANY, work=st.sampled_from(Work))
    def repair(self, tag: str, work: Work) -> None:
        """A piece is repaired, and held until somebody has inspected it: never a retired one, never evidence."""
        was = self.stood.get(tag)
        if self.do("repair", lambda office: register.repair(office, tag, work)):
            assert was is not Outcome.RETIRE and not self.evidence.get(tag), f"{tag} was repaired"
            assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} was repaired and is {self.stood[tag]}"


class Counts(Desk):
    """Counting what is there."""

    @rule(ref=COUNTS)
    def begin_count(self, ref: str) -> None:
        """A count is begun under a reference of its own."""
        self.do("begin count", lambda office: register.begin_count(office, ref, tuple(self.items())))

    @rule(ref=COUNTS, tag=ANY, counted=st.sampled_from(Counted))
    def mark(self, ref: str, tag: str, counted: Counted) -> None:
        """A piece is marked: by that alone no verdict changes."""
        before = dict(self.stood)
        self.do("mark", lambda office: register.mark(office, ref, tag, counted))
        assert self.stood == before


class People(Desk):
    """People come, and what they may judge changes."""

    @rule(name=st.sampled_from((SECOND, "Cy New", "", MEMBER)), scope=st.sampled_from(("all", "shackle", "rockets")))
    def add(self, name: str, scope: str) -> None:
        """A person is written into the register once."""
        held = (Competence(scope, self.office.today),)
        self.do("add person", lambda office: add_person(office, Person("", name, "", held)))

    @rule(name=st.sampled_from((SECOND, MEMBER)), until=st.sampled_from((None, -1, 30)))
    def change(self, name: str, until: int | None) -> None:
        """What a person may judge is given an end: no verdict gets milder by that."""
        before = dict(self.stood)
        known = next(one for one in people(self.office) if one.name == name)
        end = None if until is None else self.office.today + timedelta(until)
        held = tuple(replace(one, until=end) for one in known.competences)
        self.do("change person", lambda office: register.change_person(office, replace(known, competences=held)))
        assert self.stood == before

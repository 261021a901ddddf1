"""The bad day: what is kept as found, and who lets it go."""

from hypothesis import strategies as st
from hypothesis.stateful import invariant, precondition, rule

from inspector.duties.attach import attach
from inspector.duties.bundle_incident import bundle_incident
from inspector.duties.evidence_paper import enter_evidence
from inspector.duties.keep_incident import add_custody, add_statement, close_incident, hold_more
from inspector.duties.release_evidence import release_evidence, release_vehicle
from inspector.duties.report_incident import report_incident
from inspector.gear.attachment import PaperKind
from inspector.gear.incident import Gravity, NewIncident
from inspector.gear.outcome import Outcome
from tests.duties.machine.club import MEMBER, OFFICER, SECOND, VEHICLES
from tests.duties.machine.desk import Desk
from tests.duties.machine.pieces import ANY, PEOPLE
from tests.duties.rigs import SNATCH

AT = st.integers(0, 3)
NAMED = st.sampled_from((OFFICER, OFFICER, SECOND, SECOND, MEMBER))
_NO_REF = "I-none"


class Evidence(Desk):
    """Incidents and their evidence."""

    def __init__(self) -> None:
        super().__init__()
        self.refs: list[str] = []

    def ref(self, at: int) -> str:
        """One of the incidents there are."""
        return self.refs[at % len(self.refs)] if self.refs else _NO_REF

    @rule(
        tags=st.lists(ANY, min_size=1, max_size=2, unique=True),
        gravity=st.sampled_from((Gravity.ACCIDENT, Gravity.NEAR_MISS)),
        rigged=st.booleans(),
        cars=st.sampled_from(((), (), VEHICLES[:1])),
    )
    def report(self, tags: list[str], gravity: Gravity, rigged: bool, cars: tuple[str, ...]) -> None:
        """Of an accident all of the rig is kept as found; of a near miss nothing, but it is held until inspected."""
        told = NewIncident(
            self.office.today, gravity, "a beach", "the line let go", tuple(tags), cars, rig=SNATCH if rigged else None
        )
        if done := self.do("report incident", lambda office: report_incident(office, told)):
            self.refs.append(done.incident.ref)
            for one in done.pieces:
                tag = self.first_tag(one.dossier.item.tag)
                if gravity is Gravity.ACCIDENT:
                    self.keep(tag, done.incident.ref)
                assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} was there and is {self.stood[tag]}"

    def keep(self, tag: str, ref: str) -> None:
        """The piece is evidence from now on."""
        self.evidence.setdefault(tag, set()).add(ref)
        self.as_found.setdefault(tag, self.held(tag))

    @precondition(lambda self: self.refs)
    @rule(tag=ANY, at=AT)
    def hold_more(self, tag: str, at: int) -> None:
        """A piece that was forgotten is kept as well."""
        tag = self.rather(self.at_hand(), tag)
        ref = self.ref(at)
        if self.do("hold evidence", lambda office: hold_more(office, ref, tag, "it lay beside it")):
            self.keep(tag, ref)

    @precondition(lambda self: self.refs)
    @rule(tag=ANY, at=AT, by=NAMED, second=NAMED)
    def release(self, tag: str, at: int, by: str, second: str) -> None:
        """Two competent persons let a piece go; it stays held until somebody has inspected it."""
        tag = self.rather([one for one, kept in self.evidence.items() if kept], tag)
        ref = next(iter(sorted(self.evidence.get(tag, ()))), self.ref(at))
        self._released(tag, ref, by, second)

    def _released(self, tag: str, ref: str, by: str, second: str) -> None:
        if self.do(
            "release evidence", lambda office: release_evidence(office, ref, tag, second=second, why="drawn", by=by)
        ):
            assert by != second and MEMBER not in {by, second}, f"{by} and {second} let {tag} go"
            self.evidence[tag].discard(ref)
            if not self.evidence[tag]:
                del self.as_found[tag]
            self.unseen(tag)

    @precondition(lambda self: any(self.evidence.values()))
    @rule()
    def release_all(self) -> None:
        """Two competent persons go through all that is kept, and nothing is evidence any more."""
        for tag, kept in list(self.evidence.items()):
            for ref in sorted(kept):
                self._released(tag, ref, OFFICER, SECOND)
        for ref in self.refs:
            for car in VEHICLES:
                self.release_vehicle(car, self.refs.index(ref), SECOND)

    @precondition(lambda self: self.refs)
    @rule(car=st.sampled_from(VEHICLES), at=AT, second=PEOPLE)
    def release_vehicle(self, car: str, at: int, second: str) -> None:
        """Two let a vehicle go."""
        ref = self.ref(at)
        self.do("release vehicle", lambda office: release_vehicle(office, ref, car, second=second, why="drawn"))

    @precondition(lambda self: self.refs)
    @rule(at=AT, tag=ANY, holder=PEOPLE)
    def add_to_report(self, at: int, tag: str, holder: str) -> None:
        """A statement, and who has a piece from now on."""
        ref = self.ref(at)
        self.do("add statement", lambda office: add_statement(office, ref, "a walker", "it went bang"))
        self.do("hand evidence over", lambda office: add_custody(office, ref, tag, holder))

    @precondition(lambda self: self.refs)
    @rule(at=AT)
    def close_report(self, at: int) -> None:
        """A report is closed: not while anything is kept."""
        ref = self.ref(at)
        if self.do("close incident", lambda office: close_incident(office, ref, "all is told")):
            assert all(ref not in kept for kept in self.evidence.values()), f"{ref} was closed over its evidence"

    @rule(at=AT, about=st.one_of(ANY, st.just("T-1"), st.just("")), text=st.sampled_from((b"seen\n", b"%PDF", b"\x00")))
    def attach(self, at: int, about: str, text: bytes) -> None:
        """A paper is put in."""
        to = about or self.ref(at)
        self.do("attach", lambda office: attach(office, to, "note.txt", text, PaperKind.STATEMENT))

    @precondition(lambda self: self.refs)
    @rule(at=AT)
    def print_evidence(self, at: int) -> None:
        """The evidence list, and the bundle."""
        ref = self.ref(at)
        self.do("print evidence list", lambda office: enter_evidence(office, ref))
        folder = self.folder / f"bundle-{self.deeds}"
        self.do("bundle incident", lambda office: bundle_incident(office, ref, folder), lambda _: 2)

    @invariant()
    def evidence_stays_as_it_was_found(self) -> None:
        """It is held, and is not lent, fitted, repaired or destroyed; a loan that is out may come back."""
        for tag, then in self.as_found.items():
            now = self.held(tag)
            assert now | {"custody": 0} == then | {"custody": 0}, f"{tag} is evidence: {then} became {now}"
            assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} is evidence and is {self.stood[tag]}"

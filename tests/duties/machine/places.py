"""Where pieces are: put away, missing, stolen, sold, given back, found again; and counted."""

from hypothesis import strategies as st
from hypothesis.stateful import precondition, rule

from inspector.duties.close_count import Closed, close_count
from inspector.duties.hand_over import hand_over
from inspector.duties.print_count import print_count
from inspector.duties.print_voucher import print_voucher
from inspector.duties.take_stock import begin_count, mark
from inspector.duties.whereabouts import hand_to_owner, put_in_store, report_found, report_missing, report_stolen, sell
from inspector.gear.outcome import Outcome
from inspector.gear.stock_take import Counted
from inspector.gear.whereabouts import Where
from tests.duties.machine.club import OFFICER, SECOND
from tests.duties.machine.desk import Desk
from tests.duties.machine.pieces import ANY

COUNTS = st.sampled_from(("C-1", "C-2", "C-3", "C-4"))


class Places(Desk):
    """Pieces leave and turn up again."""

    @rule(tag=ANY, at=st.sampled_from(("Shed, hook 1", "Shed, hook 2", "")))
    def put_away(self, tag: str, at: str) -> None:
        """A piece is put in store: never evidence, never one that is gone or out."""
        if self.do("put in store", lambda office: put_in_store(office, tag, at)):
            assert tag not in self.gone and tag not in self.lent and not self.evidence.get(tag)

    @rule(tag=ANY, stolen=st.booleans())
    def lose(self, tag: str, stolen: bool) -> None:
        """A piece is reported missing or stolen: a loan ends, a part is on its vehicle no more."""
        name = "report stolen" if stolen else "report missing"
        if stolen:
            done = self.do(name, lambda office: report_stolen(office, tag, "the beach", "report 7"))
        else:
            done = self.do(name, lambda office: report_missing(office, tag, "the beach", "not on its hook"))
        if done:
            self.left(tag, Where.STOLEN if stolen else Where.MISSING)

    @rule(tag=ANY, as_it_is=st.booleans())
    def sell(self, tag: str, as_it_is: bool) -> None:
        """A piece is sold: never evidence, never a retired one, one on hold only to whoever knows it."""
        was = self.stood.get(tag)
        if self.do("sell", lambda office: sell(office, tag, "A buyer", as_it_is=as_it_is)):
            assert was is not Outcome.RETIRE and not self.evidence.get(tag), f"{tag} was sold"
            self.left(tag, Where.SOLD)
            self.close(tag)

    @rule(tag=st.sampled_from(("SH-2", "KS-2", "SH-1")), as_it_is=st.booleans())
    def give_to_owner(self, tag: str, as_it_is: bool) -> None:
        """A piece goes back to its owner, who is not the club."""
        if self.do("hand to owner", lambda office: hand_to_owner(office, tag, as_it_is=as_it_is)):
            assert not self.evidence.get(tag), f"{tag} was given back"
            self.left(tag, Where.GIVEN_BACK)

    @rule(tag=ANY)
    def find(self, tag: str) -> None:
        """What was gone is here again, and is held until somebody has inspected it."""
        tag = self.rather([one for one, where in self.gone.items() if not where.is_closed], tag)
        if self.do("report found", lambda office: report_found(office, tag, "Shed, hook 3")):
            assert self.gone.pop(tag).is_closed is False
            self.unseen(tag)

    @rule(tag=ANY)
    def print_voucher(self, tag: str) -> None:
        """The paper of a piece that left; the second time as it was said."""
        tag = self.rather([*self.destroyed, *self.gone], tag)
        before = self.line()
        self.do("print voucher", lambda office: print_voucher(office, tag), lambda _: self.line() - before)


class Counts(Desk):
    """Counting what is there."""

    @rule(ref=COUNTS, scope=st.sampled_from(("", "", "Shed")))
    def begin_count(self, ref: str, scope: str) -> None:
        """A count is begun under a reference of its own."""
        if self.do("begin count", lambda office: begin_count(office, ref, scope)):
            self.counting.append(ref)

    def __init__(self) -> None:
        super().__init__()
        self.counting: list[str] = []

    @precondition(lambda self: self.counting)
    @rule(ref=COUNTS, tags=st.lists(ANY, min_size=1, max_size=4), counted=st.sampled_from(Counted))
    def mark(self, ref: str, tags: list[str], counted: Counted) -> None:
        """Pieces are marked: by that alone no verdict changes."""
        ref = self.counting[0] if self.counting else ref
        before = dict(self.stood)
        self.do("count", lambda office: mark(office, ref, tags, counted))
        assert self.stood == before

    @precondition(lambda self: self.counting)
    @rule(ref=COUNTS)
    def print_list(self, ref: str) -> None:
        """The list to tick."""
        ref = self.counting[0] if self.counting else ref
        before = self.line()
        self.do("print count list", lambda office: print_count(office, ref), lambda _: self.line() - before)

    @rule(to=st.sampled_from((OFFICER, SECOND)))
    def count_all_and_hand_over(self, to: str) -> None:
        """Everything is counted as it lies, the count is closed, and the register passes on."""
        for ref in list(self.counting):
            self.close_count(ref, 0)
        ref = f"C-{self.deeds}"
        self.begin_count(ref, "")
        if ref in self.counting:
            self.mark(ref, [*self.items()], Counted.PRESENT)
            self.close_count(ref, 0)
        before, folder = self.line(), self.folder / f"handed-{self.deeds}"
        self.do("hand over", lambda office: hand_over(office, to, folder), lambda _: self.line() - before)

    @precondition(lambda self: self.counting)
    @rule(ref=COUNTS, sure=st.integers(0, 2))
    def close_count(self, ref: str, sure: int) -> None:
        """What differs goes into the register: absent is missing, what turned up again is held."""
        ref = self.counting[0] if self.counting else ref
        if not sure and (done := self.do("close count", lambda office: close_count(office, ref))):
            self.counting.remove(ref)
            self._closed(done)

    def _closed(self, done: Closed) -> None:
        for tag in map(self.first_tag, done.gone):
            self.left(tag, Where.MISSING)
        for tag in map(self.first_tag, done.found):
            assert self.gone.pop(tag).is_closed is False
            self.unseen(tag)

"""Recalls: what is called in is held until it is cleared or remedied, whatever else is done."""

from collections.abc import Iterable

from hypothesis import strategies as st
from hypothesis.stateful import invariant, precondition, rule

from inspector.duties.call_in import call_in, hold_more
from inspector.duties.print_recall import enter_recall_letters
from inspector.duties.print_withdrawal import enter_withdrawal_letters
from inspector.duties.read_marks import read_marks
from inspector.duties.recall_answers import close_recall, note_answer
from inspector.duties.settle_recall import ReadOnIt, not_of_it, remedied
from inspector.duties.withdraw_recall import withdraw_recall
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import Answer, Issuer, Meant, NewRecall
from tests.duties.machine.club import MEMBER, OFFICER, SECOND
from tests.duties.machine.desk import Desk
from tests.duties.machine.evidence import AT, NAMED
from tests.duties.machine.pieces import ANY

_NO_REF = "N-none"
_MOST = 3
SERIALS = st.sampled_from(("", "KS100", "KS105", "KS9?", "ZZ7"))


class Recalls(Desk):
    """Notices, letters, answers."""

    def __init__(self) -> None:
        super().__init__()
        self.notices: list[str] = []
        self.recalled: dict[str, set[str]] = {}

    def notice(self, at: int) -> str:
        """One of the recalls there are."""
        return self.notices[at % len(self.notices)] if self.notices else _NO_REF

    def told_of(self, tags: Iterable[str]) -> set[str]:
        """The first tags of those pieces of which there is an account; what a list brought in has none."""
        return {self.first_tag(tag) for tag in tags} & set(self.stood)

    @precondition(lambda self: len(self.notices) < _MOST)
    @rule(tag=ANY, named=st.booleans())
    def call_in(self, tag: str, named: bool) -> None:
        """By its name, or by a row of serials of which most pieces tell nothing."""
        meant = Meant(tags=(tag,)) if named else Meant("KELP", ("bow_shackle",), first="KS100", last="KS105")
        told = NewRecall(self.office.today, Issuer.MAKER, meant, "The thread may be the wrong one.")
        if done := self.do("call in", lambda office: call_in(office, told)):
            self.notices.append(done.recall.ref)
            for first in self.told_of(one.dossier.item.tag for one in done.pieces):
                self.recalled.setdefault(first, set()).add(done.recall.ref)
                assert self.stood[first].severity >= Outcome.HOLD.severity

    @precondition(lambda self: self.notices)
    @rule(at=AT, remind=st.booleans())
    def write_letters(self, at: int, remind: bool) -> None:
        """Of each open piece somebody is told by a letter, or the officer that nobody is."""
        ref = self.notice(at)
        self.do(
            "print recall letters",
            lambda office: enter_recall_letters(office, ref, remind=remind),
            lambda done: 1 if done[0] else 0,
        )

    @precondition(lambda self: self.notices)
    @rule(at=AT, tag=ANY, answer=st.sampled_from(Answer))
    def answer(self, at: int, tag: str, answer: Answer) -> None:
        """An answer holds and lets go nothing."""
        ref = self.notice(at)
        self.do("answer recall", lambda office: note_answer(office, ref, [tag], MEMBER, answer, "Cal Buyer"))

    @precondition(lambda self: self.recalled)
    @rule(at=AT, tag=ANY, serial=SERIALS, by=NAMED)
    def read_not_meant(self, at: int, tag: str, serial: str, by: str) -> None:
        """Only what is clearly another serial lets it go, read by somebody competent."""
        tag = self.rather(self.recalled, tag)
        ref = next(iter(sorted(self.recalled.get(tag, ()))), self.notice(at))
        read = ReadOnIt(serial, "KELP")
        if self.do("not of a recall", lambda office: not_of_it(office, ref, tag, read, by=by)):
            assert serial == "ZZ7" and by != MEMBER, f"{by} cleared {tag} by “{serial}”"
            self.recalled[tag].discard(ref)

    @precondition(lambda self: self.recalled)
    @rule(at=AT, tag=ANY, by=NAMED)
    def remedy(self, at: int, tag: str, by: str) -> None:
        """What the notice asks for is done, and holds until somebody has inspected it."""
        tag = self.rather(self.recalled, tag)
        ref = next(iter(sorted(self.recalled.get(tag, ()))), self.notice(at))
        if self.do("remedy", lambda office: remedied(office, ref, tag, "a new pin", by=by)):
            assert by != MEMBER
            self.recalled[tag].discard(ref)
            self.unseen(tag)

    @rule(tag=ANY, serial=SERIALS)
    def read_marks(self, tag: str, serial: str) -> None:
        """Marks that are read anew may bring it under an open recall, and never out of one."""
        if done := self.do("read marks", lambda office: read_marks(office, tag, "", serial, "cleaned", by=OFFICER)):
            now = {one.facts.recall for one in done.dossier.calls if one.facts.step.value == "called"}
            if any(one.rule == "recall" and one.outcome is Outcome.HOLD for one in done.verdict.findings):
                self.recalled.setdefault(self.first_tag(tag), set()).update(now - self._settled(done))

    @staticmethod
    def _settled(done: object) -> set[str]:
        """The recalls whose last step of this piece is no call."""
        calls = done.dossier.calls  # type: ignore[attr-defined]
        last = {one.facts.recall: one.facts.step.value for one in sorted(calls, key=lambda one: (one.facts.on, one.id))}
        return {ref for ref, step in last.items() if step != "called"}

    @precondition(lambda self: self.notices)
    @rule(at=AT)
    def close_recall(self, at: int) -> None:
        """A recall is closed once all of it is settled; its holds stay."""
        ref = self.notice(at)
        self.do("close recall", lambda office: close_recall(office, ref, "all is told"))

    @precondition(lambda self: self.notices)
    @rule(at=AT, by=st.sampled_from((OFFICER, OFFICER, MEMBER)), second=st.sampled_from((SECOND, SECOND, OFFICER)))
    def withdraw_recall(self, at: int, by: str, second: str) -> None:
        """Two competent persons take a notice back; of what more is known an inspection is awaited."""
        ref = self.notice(at)
        held = [tag for tag, refs in self.recalled.items() if ref in refs]
        before = dict(self.stood)
        done = self.do("withdraw recall", lambda office: withdraw_recall(office, ref, "another", second=second, by=by))
        if not done:
            return
        assert by != second and MEMBER not in {by, second}, f"{by} and {second} withdrew {ref}"
        freed = {self.first_tag(one.dossier.item.tag) for one in done.pieces}
        assert freed >= set(held), f"{set(held) - freed} stand under {ref} still"
        milder = {tag for tag, was in before.items() if self.stood[tag].severity < was.severity}
        assert milder <= freed, f"{milder - freed} got milder by withdrawing {ref}"
        for tag in held:
            self.recalled[tag].discard(ref)
        for tag in self.told_of(one for one, _ in done.doubted):
            self.unseen(tag)

    @precondition(lambda self: self.notices)
    @rule(at=AT)
    def write_withdrawal(self, at: int) -> None:
        """Whoever was written to by a withdrawn recall is told, once."""
        ref = self.notice(at)
        self.do("print withdrawal letters", lambda office: enter_withdrawal_letters(office, ref))

    @precondition(lambda self: self.notices)
    @rule(at=AT, tag=ANY)
    def hold_one_more(self, at: int, tag: str) -> None:
        """A further piece is held by hand."""
        ref = self.notice(at)
        if self.do("call one more in", lambda office: hold_more(office, ref, tag, "from the same box")):
            self.recalled.setdefault(self.first_tag(tag), set()).add(ref)

    @invariant()
    def what_is_called_in_stays_held(self) -> None:
        """No inspection, no answer, no time, no sale lets it go."""
        for tag, refs in self.recalled.items():
            if refs:
                assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} is {self.stood[tag]} under {refs}"

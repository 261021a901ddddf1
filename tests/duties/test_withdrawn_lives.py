"""Any life of pieces and recalls: once one is withdrawn, each piece stands as where it was never entered.

The same deeds are done in two registers; the recall that was wrong is entered in the first alone, and so is what is
done under it. What says otherwise is named here, by the deed that says it: a remedy waits for an inspection, and so
does what was held by hand, what somebody answered to have no more, and what one of the two who withdrew it owns. What
was read on a piece stands as its marks.
"""

import shutil
from collections import Counter
from collections.abc import Callable, Sequence
from datetime import timedelta

from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from msgspec import Struct, field
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.call_in import call_in, hold_more
from inspector.duties.give_opinion import answer_findings, doubt
from inspector.duties.judge_anew import judge_anew
from inspector.duties.judging import judged
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.read_marks import read_marks
from inspector.duties.recall_answers import note_answer
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_use
from inspector.duties.settle_recall import ReadOnIt, not_of_it, remedied
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import report_missing, sell
from inspector.duties.withdraw_recall import withdraw_recall
from inspector.gear.inspection import InspectionKind
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import Answer, Issuer, Meant, NewRecall
from inspector.gear.recall_notice import Step as Come
from inspector.gear.use import Event, NewUse
from inspector.refused import Refused
from tests.duties.gear import all_good
from tests.duties.machine.club import MEMBER, NEW, OFFICER, SECOND, SOUND, Clock, new_club

TAGS = ("SH-1", "SH-2", "KS-1", "BM-1", "SH-3", "KS-2")  # the last two are booked in during a life
MEANT = {
    "mark": Meant("KELP", ("bow_shackle",), first="KS100", last="KS105"),
    "kinds": Meant(kinds=("bow_shackle", "kinetic_strap")),
    "named": Meant(tags=("SH-1", "BM-1")),
}


class Side(Struct):
    """One of the two registers. ref: of the recall that was wrong, once it was entered; empty in the other one."""

    office: Office
    clock: Clock
    ref: str = ""
    waits: set[str] = field(default_factory=set)  # tags that a remedy or a doubt holds until they are inspected
    read: set[str] = field(default_factory=set)  # tags that were read not to be meant
    by_hand: set[str] = field(default_factory=set)  # tags that somebody held under the wrong recall
    gone: set[str] = field(default_factory=set)  # tags of which somebody answered that he has them no more


Deed = Callable[[Side, str, bool], None]
Step = tuple[Deed, str, bool]
DONE: Counter[str] = Counter()


def tried(side: Side, deed: Deed, tag: str, way: bool) -> bool:
    """Whether it was done; a refusal is as good."""
    try:
        deed(side, tag, way)
    except Refused:
        return False
    DONE[deed.__name__] += 1
    return True


# --- deeds of both registers ---


def inspect(side: Side, tag: str, spoiled: bool) -> None:
    """All of it is seen after whatever happened; now and then something slight is found."""
    kind = open_item(side.office, tag).dossier.kind
    check = next((one.key for one in kind.checks if one.key in {"label_legible", "abrasion"}), kind.checks[0].key)
    seen = all_good(side.office, kind, SOUND[tag[:2]], None, "", **({check: "slight"} if spoiled else {}))
    record_inspection(side.office, tag, replace(seen, kind=InspectionKind.AFTER_EVENT))
    side.waits.discard(tag)


def use(side: Side, tag: str, hard: bool) -> None:
    """It pulled."""
    event = Event.OVERLOAD if hard else Event.NONE
    record_use(side.office, tag, NewUse(side.office.today, 3, event, by=side.office.officer.id))


def say(side: Side, tag: str, against: bool) -> None:
    """Somebody doubts it, or answers what holds it."""
    if against:
        doubt(side.office, tag, "it clicked")
        side.gone.discard(tag)  # held by that until it is inspected
        return
    held = [one.rule for one in open_item(side.office, tag).verdict.findings if one.outcome is Outcome.HOLD]
    slight = [one for one in held if one not in {"recall", "remedy-inspected"}]
    answer_findings(side.office, tag, slight, "it holds", SECOND)


def mark(side: Side, tag: str, inside: bool) -> None:
    """Its marks are read."""
    read_marks(side.office, tag, "KELP", "KS103" if inside else "ZZ7", "cleaned", by=SECOND)


def book(side: Side, tag: str, passed: bool) -> None:
    """It is booked in."""
    book_in(side.office, replace(NEW[tag], maker_mark="KELP", serial="KS104" if passed else ""))


def leave(side: Side, tag: str, sold: bool) -> None:
    """It is sold or lost."""
    if sold:
        sell(side.office, tag, "Cal Buyer", as_it_is=True)
    else:
        report_missing(side.office, tag, "the dunes", "gone")


def call_other(side: Side, tag: str, named: bool) -> None:
    """Another notice, which is right."""
    meant = Meant(tags=(tag,)) if named else MEANT["mark"]
    call_in(side.office, NewRecall(side.office.today, Issuer.MAKER, meant, "The thread is wrong."))


def wait(side: Side, _tag: str, long: bool) -> None:
    """Days pass, and what they end is judged anew."""
    side.clock.moment += timedelta(days=200 if long else 3)
    judge_anew(side.office)


# --- deeds under the wrong recall, in the first register alone ---


def under_hold(side: Side, tag: str, _: bool) -> None:
    """Held by hand."""
    hold_more(side.office, side.ref, tag, "from the same box")
    side.by_hand.add(tag)


def under_answer(side: Side, tag: str, there: bool) -> None:
    """Somebody answers."""
    answer = Answer.HAS_IT if there else Answer.HAS_IT_NO_MORE
    note_answer(side.office, side.ref, [tag], MEMBER, answer)
    if not there:
        side.gone.add(tag)


def under_remedy(side: Side, tag: str, _: bool) -> None:
    """What the notice asks for is done."""
    remedied(side.office, side.ref, tag, "a new part", by=OFFICER)
    side.waits.add(tag)
    side.by_hand.discard(tag)


def under_read(side: Side, tag: str, _: bool) -> None:
    """It is read not to be meant."""
    not_of_it(side.office, side.ref, tag, ReadOnIt("ZZ9", "KELP"), by=SECOND)
    side.read.add(tag)
    side.by_hand.discard(tag)


BOTH = (inspect, inspect, use, say, say, mark, book, book, leave, call_other, wait)
UNDER = (under_hold, under_answer, under_remedy, under_read)
STEPS = st.lists(st.tuples(st.sampled_from((*BOTH, *UNDER)), st.sampled_from(TAGS), st.booleans()), max_size=14)


def live(sides: tuple[Side, Side], steps: Sequence[Step]) -> None:
    """Do the deeds. One of both registers is done in both or in none."""
    for step in steps:
        if step[0] in UNDER:
            live_under(sides, *step)
        elif tried(sides[1], *step):
            step[0](sides[0], *step[1:])


def live_under(sides: tuple[Side, Side], deed: Deed, tag: str, way: bool) -> None:
    """Do it in the first; of what was read on a piece the marks are read in the other as well."""
    first, other = sides
    if first.ref and tried(first, deed, tag, way) and deed is under_read:
        tried(other, same_marks, tag, way)


def same_marks(side: Side, tag: str, _: bool) -> None:
    """The marks that `under_read` reads."""
    read_marks(side.office, tag, "KELP", "ZZ9", "cleaned", by=SECOND)


def told(side: Side, tag: str) -> Judged:
    """The piece judged now; what is stored says the same."""
    with side.office.book.reading() as page:
        item = page.item(tag)
        found = judged(side.office, page.dossier(item, side.office.kind(item.facts.kind), side.office.today))
    assert open_item(side.office, tag).verdict.outcome is found.verdict.outcome, tag
    return found


def words(found: Judged) -> object:
    """All that is said of a piece but the ids of what it rests on."""
    said = found.verdict
    findings = tuple(
        replace(one, rests_on="", by="", answered=bool(one.answered) * "an opinion") for one in said.findings
    )
    rest = (said.outcome, said.by_purpose, said.capacity, said.next_due, said.holds_until, said.releases)
    return findings, rest, found.explanation


def unsure(side: Side) -> set[str]:
    """What the wrong recall holds and more is known of; not what is retired or was sold."""
    with side.office.book.reading() as page:
        calls = page.standing_calls(side.ref)
        items = page.items_with(key for key, one in calls.items() if one.facts.step is Come.CALLED)
        places = page.whereabouts(items)
    left = {one.tag for one in items if not places[one.id].where.is_closed}
    own = {one.tag for one in items if one.facts.owner in {OFFICER, SECOND}}
    stand = {tag for tag in left if open_item(side.office, tag).verdict.outcome is not Outcome.RETIRE}
    return stand & (side.by_hand | side.gone | own)


def check(sides: tuple[Side, Side], doubted: set[str]) -> None:
    """Each piece of the first register against the same one of the other."""
    first, other = sides
    with other.office.book.reading() as page:
        tags = [tag for tag in TAGS if page.has_tag(tag)]
    for tag in tags:
        here, there = told(first, tag), told(other, tag)
        assert here.verdict.outcome.severity >= there.verdict.outcome.severity, f"{tag} is milder than without"
        is_remedied = any(
            one.facts.recall == first.ref and one.facts.step is Come.REMEDIED for one in here.dossier.calls
        )
        if tag in first.waits | doubted:
            assert here.verdict.outcome.severity >= Outcome.HOLD.severity, f"{tag} waits to be seen"
        elif is_remedied or tag in first.read:
            assert here.verdict.outcome is there.verdict.outcome, f"{tag}: {words(here)} is not {words(there)}"
        else:
            assert words(here) == words(there), f"{tag}: {words(here)} is not {words(there)}"


@settings(
    max_examples=25, deadline=None, suppress_health_check=list(HealthCheck), phases=(Phase.explicit, Phase.generate)
)
@given(STEPS, st.sampled_from(("mark", "mark", *MEANT)), STEPS, STEPS)
def each_piece_as_without_it(before: list[Step], meant: str, between: list[Step], after: list[Step]) -> None:
    """A life before, one under the recall, and one after it was withdrawn."""
    clocks = Clock(), Clock()
    clubs = [new_club(clock) for clock in clocks]
    sides = Side(clubs[0][0], clocks[0]), Side(clubs[1][0], clocks[1])
    try:
        for side in sides:
            lend(side.office, ["SH-1"], MEMBER, side.office.today + timedelta(days=30))
        first = sides[0]
        live(sides, before)
        wrong = NewRecall(first.office.today, Issuer.MAKER, MEANT[meant], "The pins may snap.")
        first.ref = call_in(first.office, wrong).recall.ref
        live(sides, between)
        doubted = unsure(first)
        done = withdraw_recall(first.office, first.ref, "another maker's", second=SECOND)
        assert {tag for tag, _ in done.doubted} == doubted
        check(sides, doubted)
        first.waits |= doubted
        live(sides, [one for one in after if one[0] not in UNDER])
        check(sides, set())
        assert [verify_book(side.office).faults for side in sides] == [(), ()]
    finally:
        for office, folder in clubs:
            office.book.close()
            shutil.rmtree(folder)


def test_a_withdrawn_recall_leaves_each_piece_as_if_it_had_never_been_entered() -> None:
    each_piece_as_without_it()
    assert DONE.total() > 60 and len(DONE) > 8, f"too few deeds were done to show anything: {DONE}"

"""Pieces leave and come back in any order: none is nowhere, none sold or destroyed returns, no find is used unseen.

The whole machine rarely finds a piece that is sound otherwise, so these deeds have a machine of their own, in which a
find is looked at by somebody competent, by a member, or in an inspection made before it and told late.
"""

from collections.abc import Callable
from typing import ClassVar

from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import invariant, precondition, rule, run_state_machine_as_test

from inspector.duties.destroy_item import destroy_item
from inspector.duties.fit_parts import take_off_part
from inspector.duties.give_back import give_back
from inspector.duties.lend import lend
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.whereabouts import hand_to_owner, put_in_store, report_found, sell
from inspector.gear.custody import NOTHING_HAPPENED
from inspector.gear.fitting import End
from inspector.gear.outcome import Outcome
from tests.duties.machine.club import MEMBER, OFFICER, SECOND
from tests.duties.machine.desk import Tally
from tests.duties.machine.hands_and_trips import CARS, Fleet, Hands
from tests.duties.machine.pieces import ANY, seen
from tests.duties.machine.places import Places

RUNS, STEPS = 12, 30
REACHED = ("report found", "sell", "hand to owner", "destroy", "fit part", "take off part", "lend", "take back")
LOOKS = st.sampled_from((MEMBER, MEMBER, OFFICER, SECOND))


class ComingsAndGoings(Places, Hands, Fleet):
    """The deeds that move pieces, and those that could let a find be used again."""

    tally: ClassVar[Tally] = Tally()
    unseen_looks: ClassVar[list[str]] = []  # finds that were still held after a look that does not count

    @rule(tag=ANY, by=LOOKS, ago=st.sampled_from((0, 1)))
    def look(self, tag: str, by: str, ago: int) -> None:
        """A find is looked at and all of it is good: by a member, late, or as it should be."""
        tag = self.rather(self.waits, tag)
        counts = tag not in self.waits or by != MEMBER
        done = self.do("inspect", lambda office: record_inspection(office, tag, seen(office, tag, by, ago, 1.0)))
        if done and not counts:
            assert self.stood[tag].severity >= Outcome.HOLD.severity, f"{tag} was found; a member passed it"
            self.unseen_looks.append(tag)

    @rule(tag=ANY, by=LOOKS, ago=st.sampled_from((0, 1)), stolen=st.booleans())
    def lose_find_and_look(self, tag: str, by: str, ago: int, stolen: bool) -> None:
        """A sound piece is lost, found and looked at."""
        tag = self.rather(self.at_hand(), tag)
        self.lose(tag, stolen)
        if tag in self.gone and not self.gone[tag].is_closed:
            self.find(tag)
            self.look(tag, by, ago)

    @rule(tag=ANY)
    def retire_and_destroy(self, tag: str) -> None:
        """A piece is worn out and made unusable."""
        tag = self.rather(self.at_hand(), tag)
        self.do("inspect", lambda office: record_inspection(office, tag, seen(office, tag, OFFICER, 0, 0.5)))
        if self.do("destroy", lambda office: destroy_item(office, tag, "cut in two")):
            self.destroyed.add(tag)
            self.close(tag)
            self.bring_back(tag)

    @rule(car=CARS, lost=st.booleans())
    def fit_and_take_off(self, car: str, lost: bool) -> None:
        """A part goes on a vehicle, and comes off it or is lost there."""
        self.fit("RP-1", car, End.REAR, 0)
        if lost:
            self.lose("RP-1", False)
        off = self.do("take off part", lambda office: take_off_part(office, "RP-1"))
        assert off is None or "RP-1" not in self.gone, "a lost part sat on its vehicle still"

    @rule(tag=ANY, lost=st.booleans())
    def lend_and_return(self, tag: str, lost: bool) -> None:
        """A sound piece goes out, and comes back or is lost on the loan: then it does not come back as a return."""
        tag = self.rather(self.at_hand(), tag)
        self.lend([tag], OFFICER, 1)
        if lost and tag in self.lent:
            self.lose(tag, False)
            assert self.do("take back", lambda office: give_back(office, tag, OFFICER, NOTHING_HAPPENED)) is None
        else:
            self.give_back(tag, OFFICER, NOTHING_HAPPENED)

    @precondition(lambda self: self.closed)
    @rule(tag=ANY)
    def bring_back(self, tag: str) -> None:
        """Whatever is tried with a piece that was sold or destroyed is refused."""
        tag = self.rather(self.closed, tag)
        tries: dict[str, Callable[[Office], object]] = {
            "report found": lambda office: report_found(office, tag, "Shed"),
            "put in store": lambda office: put_in_store(office, tag, "Shed"),
            "lend": lambda office: lend(office, [tag], OFFICER, office.today),
            "inspect": lambda office: record_inspection(office, tag, seen(office, tag, OFFICER, 0, 1.0)),
            "hand to owner": lambda office: hand_to_owner(office, tag, as_it_is=True),
            "sell": lambda office: sell(office, tag, "Another buyer", as_it_is=True),
        }
        if tag in self.closed:
            for deed, call in tries.items():
                assert self.do(deed, call) is None, f"{deed}: {tag} was sold or destroyed"

    @invariant()
    def no_find_is_lent_unseen(self) -> None:
        """What waits to be seen is with nobody."""
        assert not self.lent & set(self.waits)


def test_none_is_nowhere_none_comes_back_for_good_and_no_find_is_used_unseen() -> None:
    profile = settings(
        max_examples=RUNS,
        phases=(Phase.generate,),
        stateful_step_count=STEPS,
        deadline=None,
        database=None,
        derandomize=True,  # so that what the runs reach can be asked for
        suppress_health_check=list(HealthCheck),
        print_blob=False,
    )
    run_state_machine_as_test(ComingsAndGoings, settings=profile)
    done = ComingsAndGoings.tally.done
    assert [deed for deed in REACHED if not done[deed]] == [], "these deeds were never done: nothing was shown of them"
    assert ComingsAndGoings.unseen_looks, "no find was ever looked at by a member: nothing was shown"

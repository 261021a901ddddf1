"""Deeds of trips: planned, packed, checked, lent, brought back, told; parts on vehicles; rigs and documents."""

from datetime import timedelta

from hypothesis import strategies as st
from hypothesis.stateful import precondition, rule
from msgspec.structs import replace

from inspector.duties.before_use import asked_checks
from inspector.duties.bench import HandoutAsked
from inspector.duties.check_piece import check_piece
from inspector.duties.debrief import debrief
from inspector.duties.fit_parts import fit_part, take_off_part
from inspector.duties.give_back import give_back, give_back_kit
from inspector.duties.judging import judged
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.keep_vehicles import add_vehicle, change_vehicle
from inspector.duties.lend import lend, lend_kit
from inspector.duties.look_up import trip, trips
from inspector.duties.plan_trip import change_trip, plan_trip
from inspector.duties.print_handout import print_handout
from inspector.duties.print_labels import enter_labels
from inspector.duties.print_lending_slip import enter_lending_slip
from inspector.duties.print_letters import enter_letters
from inspector.duties.print_record import enter_record
from inspector.duties.print_report import enter_report
from inspector.duties.print_rig_sheet import print_rig_sheet
from inspector.duties.print_sheets import enter_trip_sheet
from inspector.duties.print_slips import enter_slips
from inspector.duties.print_tags import enter_tags
from inspector.duties.retire_item import print_notice
from inspector.duties.work_rigs import pack_trip, set_kit, work_rig
from inspector.gear.custody import NOBODY_TOLD, NOTHING_HAPPENED, WentThrough
from inspector.gear.debrief import NewDebrief, RigUsed
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.inspection import Answer
from inspector.gear.kind import Grade
from inspector.gear.kit_check import Seen
from inspector.gear.label_sizes import LABEL_SIZES, LabelSize
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Ground, Trip
from inspector.gear.use import NewUse
from tests.duties.due_checks import assert_nothing_is_absent
from tests.duties.gear import kilograms
from tests.duties.machine.club import NEW, OFFICER, VEHICLES
from tests.duties.machine.desk import Desk
from tests.duties.machine.pieces import ANY, PEOPLE
from tests.duties.needs_checks import assert_every_hold_is_told
from tests.duties.rigs import SNATCH

REFS = st.sampled_from(("T-1", "T-1", "T-1", "T-2", "T-9"))
CARS = st.sampled_from((*VEHICLES, *VEHICLES, "V-9"))
TAGS_TOGETHER = st.lists(ANY, min_size=1, max_size=3)


class Trips(Desk):
    """Trips, their kits, and what was told of them."""

    @rule(ref=st.sampled_from(("T-1", "T-2")), days=st.integers(0, 3), kit=TAGS_TOGETHER)
    def plan(self, ref: str, days: int, kit: list[str]) -> None:
        """A trip is planned from today on."""

        def planned(_: object = None) -> Trip:
            last = self.office.today + timedelta(days)
            first = self.office.today
            return Trip("", ref, "Days", "Long Sand", Ground.MUD, first, last, OFFICER, VEHICLES, tuple(kit))

        self.do("plan trip", lambda office: plan_trip(office, planned()))

    @rule(ref=REFS, days=st.integers(-1, 5))
    def change(self, ref: str, days: int) -> None:
        """A trip is put off."""
        last = self.office.today + timedelta(days)
        self.do(
            "change trip",
            lambda office: change_trip(
                office, ref, lambda one: replace(one, first_on=office.today, last_on=last), "weather"
            ),
        )

    @rule(ref=REFS)
    def pack(self, ref: str) -> None:
        """A kit is packed by need: of nothing that is not there, held for all, retired, lent or evidence."""
        packed: list[str] = []

        def by_need(office: object) -> Trip:
            found = pack_trip(self.office, ref)
            packed.extend(self.first_tag(one.tag) for one in found.takes)
            return set_kit(self.office, ref, found)

        self.do("pack kit", by_need)
        for tag in packed:
            assert tag not in self.lent | self.destroyed | set(self.gone), f"{tag} was packed and is not there"
            assert not self.evidence.get(tag), f"{tag} was packed and is evidence"
            assert self.stood[tag] is not Outcome.RETIRE, f"{tag} was packed and is retired"
            assert not self._held_for_all(ref, tag), f"{tag} was packed and is held"

    def _held_for_all(self, ref: str, tag: str) -> bool:
        day = max(self.office.today, trip(self.office, ref).last_on)
        with self.office.book.reading() as page:
            dossier = page.dossier(page.item(tag), self.office.kind(NEW[tag].kind), day)
        verdict = judged(self.office, dossier).verdict
        return all(one.outcome.severity >= Outcome.HOLD.severity for one in verdict.by_purpose)

    @rule(ref=REFS, tag=ANY, by=PEOPLE, grade=st.sampled_from((Grade.GOOD, Grade.GOOD, Grade.BAD)))
    def check(self, ref: str, tag: str, by: str, grade: Grade) -> None:
        """A member looks a piece over before the trip: it never gets milder by that."""
        kit = next((one.kit for one in trips(self.office) if one.ref == ref), ())
        tag = self.rather([self.first_tag(one) for one in kit], tag)
        first, *rest = asked_checks(self.office.kind(NEW[tag].kind))
        seen = Seen((Answer(first.key, grade), *(Answer(one.key, Grade.GOOD) for one in rest)))
        was = self.stood.get(tag)
        if self.do("check before use", lambda office: check_piece(office, ref, tag, by, seen)) and was:
            assert self.stood[tag].severity >= was.severity, f"{tag} was {was}, and a member's check made it milder"

    @rule(ref=REFS, by=PEOPLE, pulls=st.integers(1, 3), jerked=st.booleans())
    def debrief(self, ref: str, by: str, pulls: int, jerked: bool) -> None:
        """What was pulled is told."""
        self.do(
            "debrief",
            lambda office: debrief(
                office,
                NewDebrief(ref, office.today, (RigUsed(SNATCH, pulls, office.today, jerked=jerked),), by),
            ),
        )

    @rule(ref=st.sampled_from(("R-1", "R-2", "")))
    def keep_rig(self, ref: str) -> None:
        """A rig is kept."""
        self.do("keep rig", lambda office: keep_rig(office, ref, SNATCH))


class Hands(Desk):
    """Pieces go out and come back."""

    @rule(tags=TAGS_TOGETHER, to=PEOPLE, days=st.sampled_from((0, 1, 9, -1)))
    def lend(self, tags: list[str], to: str, days: int) -> None:
        """Pieces are handed out: nothing that is gone, lent, retired or evidence."""
        tags = list(dict.fromkeys(self.rather(self.at_hand(), tag) for tag in tags))
        due = self.office.today + timedelta(days)
        if done := self.do("lend", lambda office: lend(office, tags, to, due)):
            self._went_out([self.first_tag(one.tag) for one in done])

    @rule(ref=REFS, to=PEOPLE)
    def lend_kit(self, ref: str, to: str) -> None:
        """A whole kit is handed out."""
        if done := self.do("lend kit", lambda office: lend_kit(office, ref, to)):
            self._went_out([self.first_tag(one.tag) for one in done])

    def _went_out(self, tags: list[str]) -> None:
        for tag in tags:
            assert tag not in self.lent | set(self.gone) | self.destroyed, f"{tag} was lent and is not there"
            assert not self.evidence.get(tag), f"{tag} was lent and is evidence"
            assert self.stood[tag] is not Outcome.RETIRE, f"{tag} was lent and is retired"
        self.lent |= set(tags)

    @precondition(lambda self: self.lent)
    @rule(tag=ANY, by=PEOPLE, told=st.sampled_from((NOBODY_TOLD, NOTHING_HAPPENED, None)))
    def give_back(self, tag: str, by: str, told: WentThrough | None) -> None:
        """A piece comes back, with what was told of it or nothing."""
        tag = self.rather(self.lent, tag)
        went = told or WentThrough((NewUse(self.office.today, 2),), ())
        if self.do("take back", lambda office: give_back(office, tag, by, went)):
            self.lent.discard(tag)

    @rule(ref=REFS, by=PEOPLE)
    def give_back_kit(self, ref: str, by: str) -> None:
        """All that is out for a trip comes back."""
        for one in self.do("take back kit", lambda office: give_back_kit(office, ref, by)) or ():
            self.lent.discard(self.first_tag(one.dossier.item.tag))


class Fleet(Desk):
    """Vehicles, and what sits on them."""

    @rule(tag=CARS, mass=st.sampled_from(("2500 kg", "3100 kg", "9 kg")))
    def weigh(self, tag: str, mass: str) -> None:
        """A vehicle is weighed anew."""
        self.do(
            "change vehicle",
            lambda office: change_vehicle(office, tag, lambda one: replace(one, mass=kilograms(mass)), "weighed"),
        )

    @rule(tag=CARS)
    def add_vehicle(self, tag: str) -> None:
        """A vehicle comes into the register."""
        self.do("add vehicle", lambda office: add_vehicle(office, tag, "Truck", "Club", kilograms("3000 kg")))

    @rule(tag=ANY, car=CARS, end=st.sampled_from(End), ago=st.sampled_from((0, 0, 0, -1, 9)))
    def fit(self, tag: str, car: str, end: End, ago: int) -> None:
        """A part is put on a vehicle: never one that is retired, gone or evidence."""
        was, day = self.stood.get(tag), self.office.today - timedelta(ago)
        if self.do("fit part", lambda office: fit_part(office, tag, Fitted(car, end, Side.UNKNOWN), on=day)):
            assert was is not Outcome.RETIRE and not self.evidence.get(tag), f"{tag} was fitted"

    @rule(tag=ANY, by=PEOPLE)
    def take_off(self, tag: str, by: str) -> None:
        """A part is taken off its vehicle."""
        self.do("take off part", lambda office: take_off_part(office, tag, by=by))


class Papers(Desk):
    """Documents are numbered, kept and printed."""

    @rule(ref=REFS)
    def print_sheet(self, ref: str) -> None:
        """The sheet of a trip."""
        self.do("print sheet", lambda office: enter_trip_sheet(office, ref))

    @rule(tag=ANY)
    def print_notice(self, tag: str) -> None:
        """The notice of a retired piece; the second time as it was said."""
        tag = self.rather(self.retired(), tag)
        own = "(SELECT id FROM item WHERE tag = ?)"
        papers = f"SELECT count(*) FROM document WHERE kind = 'retirement_notice' AND about = {own}"

        def known() -> int:
            return int(self.watch.execute(papers, (tag,)).fetchone()[0])

        before = known()
        self.do("print notice", lambda office: print_notice(office, tag), lambda _: known() - before)

    @rule()
    def print_letters(self) -> None:
        """To everybody of whom anything is asked."""
        self.do("print letters", enter_letters)

    @rule(tag=ANY)
    def print_record(self, tag: str) -> None:
        """All that is known of a piece."""
        self.do("print record", lambda office: enter_record(office, tag))

    @rule()
    def print_report(self) -> None:
        """All the gear."""
        self.do("print report", enter_report)

    @rule(days=st.sampled_from((0, 90, 4000)))
    def look_ahead(self, days: int) -> None:
        """The calendar leaves out nothing that falls due, and the first page nothing that holds a piece."""
        assert_nothing_is_absent(self.office, days)
        assert_every_hold_is_told(self.office)

    @rule()
    def print_slips(self) -> None:
        """For every piece of which anything is due."""
        self.do("print slips", enter_slips)

    @rule(tags=TAGS_TOGETHER, size=st.sampled_from(LABEL_SIZES))
    def print_labels(self, tags: list[str], size: LabelSize) -> None:
        """Of what is here and not retired."""
        if self.do("print labels", lambda office: enter_labels(office, tags, size.key, size.count)):
            for tag in map(self.first_tag, tags):
                assert tag not in self.destroyed | set(self.gone), f"{tag} is not here and got a label"
                assert self.stood[tag] is not Outcome.RETIRE, f"{tag} is retired and got a label"

    @rule(tags=TAGS_TOGETHER)
    def print_tags(self, tags: list[str]) -> None:
        """Of what is here and not free for use."""
        tags = [self.rather(sorted(one for one, stands in self.stood.items() if stands is not Outcome.FIT), tags[0])]
        if self.do("print tags", lambda office: enter_tags(office, tags)):
            for tag in map(self.first_tag, tags):
                assert tag not in self.destroyed | set(self.gone), f"{tag} is not here and got a tag"
                assert self.stood[tag] is not Outcome.FIT, f"{tag} is fit and got a tag that says otherwise"

    @rule(by=PEOPLE)
    def print_lending_slip(self, by: str) -> None:
        """Of all that somebody has on loan, and of nothing else."""
        slip = self.do("print lending slip", lambda office: enter_lending_slip(office, by))
        for one in slip.pieces if slip else ():
            tag = self.first_tag(one.tag)
            assert tag in self.lent, f"{tag} is not out and stands on a lending slip"
            assert one.may_use or not one.may_for, f"{tag} may not be used and the slip says for what"

    @rule()
    def print_rig_sheet(self) -> None:
        """The account of a rig."""
        self.do("print rig sheet", lambda office: print_rig_sheet(office, work_rig(office, SNATCH)))

    @rule(topic=st.sampled_from(["pin", "ball", "weld", "wall", "strap", "speed"]))
    def print_handout(self, topic: str) -> None:
        """A topic of the trainer's bench, with its usual figures."""
        self.do("print handout", lambda office: print_handout(office, HandoutAsked(topic)))

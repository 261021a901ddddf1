"""Three trips of the sample register, each taken by the duties from its plan to what was told of it afterwards."""

import json
import sqlite3
from contextlib import closing
from datetime import timedelta

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.before_use import asked_checks
from inspector.duties.check_kit import kit_check
from inspector.duties.check_piece import check_piece, check_sheet
from inspector.duties.debrief import debrief
from inspector.duties.give_back import give_back_kit
from inspector.duties.judge_anew import judge_anew
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.lend import lend_kit
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.print_sheets import enter_trip_sheet
from inspector.duties.work_rigs import pack_trip, propose_rig, set_kit, shares_of, work_kept_rig
from inspector.gear.custody import WentThrough
from inspector.gear.debrief import Debriefed, NewDebrief, RigUsed
from inspector.gear.inspection import Answer
from inspector.gear.judged import Judged
from inspector.gear.kind import Grade, Kind
from inspector.gear.kit_check import KitCheck, Seen
from inspector.gear.papers import TripSheet
from inspector.gear.rig import Method, Rig
from inspector.gear.rig_result import RigResult
from inspector.gear.trip import Ground, Trip
from inspector.gear.use import NewExposure, Weather

NEAR_MISS = "It came out sideways and missed the gate post by an arm's length."


class Journey(Struct, frozen=True):
    """A trip and what happens on it. Days are counted from the evening the sample was built."""

    ref: str
    packed: int
    first: int
    last: int
    pulling: str
    bogged: str
    method: Method
    leader: str
    member: str
    weather: Weather


JOURNEYS = (
    Journey("T-05", 1, 3, 4, "V-04", "V-09", Method.KINETIC, "Hanne Lodewell", "Nell Hobbery", Weather.SALT),
    Journey("T-07", 8, 11, 12, "V-04", "V-08", Method.WINCH, "Des Thackerow", "Ana Kestrow", Weather.SUN),
    Journey("T-06", 36, 38, 40, "V-09", "V-08", Method.KINETIC, "Rua Pallowin", "Joss Ferrabel", Weather.MUD),
)


class Taken(Struct, frozen=True):
    """What came of each step. broken: the first rig after its shackle was found bad; rig: the one really used."""

    journey: Journey
    office: Office
    kit: tuple[str, ...]
    first: RigResult
    bad: str
    broken: RigResult
    rig: RigResult
    sheet: TripSheet
    on_sheet: tuple[Judged, ...]
    checked: KitCheck
    told: Debriefed
    back: tuple[Judged, ...]
    lines: tuple[tuple[str, dict[str, object]], ...]

    @property
    def used(self) -> frozenset[str]:
        """The pieces of the rig, what lay over the line among them."""
        return frozenset((*self.rig.rig.tags, *self.rig.rig.dampers))


def good(kind: Kind, **but: str) -> Seen:
    """Every question before use answered as good, but for those named."""
    return Seen(tuple(Answer(one.key, Grade(but.get(one.key, "good"))) for one in asked_checks(kind)))


def seen(office: Office, tag: str, **but: str) -> Seen:
    """A piece looked at in full."""
    return good(open_item(office, tag).dossier.kind, **but)


def on_day(sample: Office, days: int) -> Office:
    """The office on the evening of a day; what time has changed is judged."""
    office = sample.at(sample.now + timedelta(days=days))
    judge_anew(office)
    return office


def ledger(office: Office) -> list[tuple[str, dict[str, object]]]:
    """Deed and body of every line."""
    with closing(sqlite3.connect(office.out_tray.parent / "register.db")) as book:
        found = book.execute("SELECT deed, body FROM ledger ORDER BY id").fetchall()
    return [(deed, json.loads(body)) for deed, body in found]


def take(sample: Office, journey: Journey) -> Taken:
    """The whole trip."""
    began = len(ledger(sample))
    kit, first = _planned(on_day(sample, journey.packed), journey)
    sheet = _handed_out(on_day(sample, journey.first - 1), journey)
    away = on_day(sample, journey.first)
    bad, broken, second = _shackle_left(away, journey, first.rig)
    rest = {one.tag: seen(away, one.tag) for one in sheet.going if one.tag != bad}
    on_sheet = check_sheet(away, sheet.imprint.number, journey.leader, rest)
    checked = kit_check(away, journey.ref)
    home = on_day(sample, journey.last)
    used = RigUsed(second.rig, 2, home.today, near_miss=NEAR_MISS)
    told = debrief(home, NewDebrief(journey.ref, home.today, (used,), journey.leader), shares_of(home))
    weather = (NewExposure(home.today, journey.weather, 1, rinsed=True),)
    back = give_back_kit(home, journey.ref, journey.leader, WentThrough(None, weather))
    lines = tuple(ledger(sample)[began:])
    return Taken(journey, home, kit, first, bad, broken, second, sheet, on_sheet, checked, told, back, lines)


def _planned(office: Office, journey: Journey) -> tuple[tuple[str, ...], RigResult]:
    """The kit by need, and the rig that is proposed and kept."""
    if journey.ref == "T-07":
        first = office.today + timedelta(days=journey.first - journey.packed)
        last = office.today + timedelta(days=journey.last - journey.packed)
        people = (journey.leader, journey.member)
        cars = ("V-04", "V-08", "V-02")
        plan_trip(
            office, Trip("", "T-07", "Step", "Candle Ridge", Ground.GRAVEL, first, last, people[0], cars, (), people)
        )
    kit = set_kit(office, journey.ref, pack_trip(office, journey.ref)).kit
    return kit, _kept(office, journey, f"R-{journey.ref}")


def _kept(office: Office, journey: Journey, ref: str) -> RigResult:
    """The best rig of the kit for the two vehicles, kept under a reference."""
    found = propose_rig(office, journey.ref, journey.method, journey.pulling, journey.bogged).result
    assert found is not None
    keep_rig(office, ref, replace(found.rig, name=f"{found.rig.name}, {ref}"))
    return work_kept_rig(office, ref)


def _handed_out(office: Office, journey: Journey) -> TripSheet:
    """The sheet is printed and the kit handed to the leader."""
    sheet = enter_trip_sheet(office, journey.ref)
    lend_kit(office, journey.ref, journey.leader)
    return sheet


def _shackle_left(office: Office, journey: Journey, rig: Rig) -> tuple[str, RigResult, RigResult]:
    """A member finds a shackle of the rig bad: its tag, the rig with it, and the rig proposed without it."""
    bad = next(tag for tag in rig.tags if tag.startswith(("SH-", "DS-")))
    check_piece(office, journey.ref, bad, journey.member, seen(office, bad, pin_seats="bad"))
    broken = work_kept_rig(office, f"R-{journey.ref}")
    return bad, broken, _kept(office, journey, f"R-{journey.ref}-2")

"""Invented documents of an invented club."""

from collections.abc import Callable
from datetime import date

import pytest
from msgspec.structs import replace

from inspector.gear.capacity import Capacity, CapacityStep, SteelStrength
from inspector.gear.outcome import Outcome
from inspector.gear.papers import (
    GoingPiece,
    Imprint,
    RetirementNotice,
    RigLine,
    StayingPiece,
    TickLine,
    TripSheet,
    VehicleLine,
)
from inspector.gear.rig_result import RigOutcome
from inspector.gear.verdict import Fact, Reason, Status, WallForecast, WallPoint

CAUTIONS = (
    "This sheet helps to decide; it does not certify any part. A competent person decides.",
    "The maker's instructions, local law, codes and an engineer's or certified inspector's word go before it.",
    "Stay clear of a loaded line: nobody within one and a half times its length, nobody in line with it.",
)
RESTS_ON = ("Rulebook of the club, 1 March 2026", "inspections up to 12 June 2026", "ledger head 9f2c41d07ab3")

SHACKLE_TICKS = (
    TickLine("Bow and pin: cracks, nicks, dents, bent out of line?"),
    TickLine("Pin: does it screw in by hand to the shoulder?"),
    TickLine("Marking: rating, maker and size readable?"),
    TickLine("Bow diameter at the worst place", "not below 17.1 mm"),
)
STRAP_TICKS = (
    TickLine("Webbing: cuts, holes, frayed edges, burnt or glazed places?"),
    TickLine("Stitching: any broken, pulled or worn stitch?"),
    TickLine("Eyes: sleeve worn through, chafed at the bight?"),
    TickLine("Stiff, faded or powdery from sun, or smelling of fuel or acid?"),
    TickLine("Label: rating and date readable?"),
    TickLine("Sand or mud worked into the weave? Rinse and dry before use."),
)


def imprint(title: str, number: str) -> Imprint:
    return Imprint("Sandbar Touring Club", title, number, date(2026, 6, 13), "Equipment officer", RESTS_ON, CAUTIONS)


def shackle(tag: str) -> GoingPiece:
    return GoingPiece(
        tag,
        "Bow shackle",
        "WLL 4.75 t, factor 6",
        "MBS 279.5 kN",
        "Any pull up to its working load limit.",
        Outcome.FIT,
        SHACKLE_TICKS,
    )


def strap(tag: str) -> GoingPiece:
    return GoingPiece(
        tag,
        "Kinetic strap",
        "MBS 8,000 kg",
        "MBS 62.8 kN",
        "Kinetic pull of vehicles up to 2,600 kg; static pull up to 15.7 kN.",
        Outcome.DERATE,
        STRAP_TICKS,
    )


RIG = RigLine(
    "R-1", "Beach snatch", RigOutcome.SOUND, "kinetic pull", "V-02 pulls V-01", "S-021 · Kinetic strap, 61 % is used",
    "at most 6 km/h as the line comes taut", "13.5 m", "It holds.",
)  # fmt: skip
STAYING = (
    StayingPiece(
        "T-014",
        "Hitch receiver",
        Outcome.RETIRE,
        "The wall is 2.2 mm at “left face”; it must keep 3.0 mm for the pin to bear its rating.",
    ),
    StayingPiece(
        "B-003",
        "Ball mount",
        Outcome.HOLD,
        "The wall inside has never been measured since its first day in salt water.",
    ),
)
VEHICLES = (
    VehicleLine("V-01", "Grey long-wheelbase wagon", "2,850 kg", "5.7 t to 8.6 t"),
    VehicleLine(
        "V-02",
        "Small two-door",
        "1,450 kg",
        "2.9 t to 4.4 t",
        "strap S-021 (8,000 kg) is too strong for it: it will not stretch, the jerk goes into the chassis.",
    ),
)


@pytest.fixture
def trip_sheet() -> TripSheet:
    """Nine pieces go, two stay, two vehicles."""
    return a_trip_sheet()


def a_trip_sheet() -> TripSheet:
    """The same, made."""
    tags = ("S-021", "S-022", "K-031", "K-032", "K-033", "K-034", "S-023", "K-035", "K-036")
    goes = tuple(strap(tag) if tag.startswith("S") else shackle(tag) for tag in tags)
    said = imprint("Pre-trip inspection sheet", "A-2026-0113")
    place = "Long Spit, north end"
    return TripSheet(
        said, "Winter beach run", place, "20 to 21 June 2026", "Trip leader of the day", VEHICLES, goes, STAYING
    )


WALL = WallForecast(
    nominal_m=0.0063,
    outside_m=0.0635,
    required_m=0.0030,
    required_because="bearing of the hitch pin at its marked rating",
    history=(
        WallPoint(date(2019, 4, 2), 0.0058, 0.0056, "top", "5.8 mm"),
        WallPoint(date(2022, 5, 14), 0.0041, 0.0039, "left", "4.1 mm"),
        WallPoint(date(2024, 3, 9), 0.0034, 0.0032, "left", "3.4 mm"),
        WallPoint(date(2026, 6, 12), 0.0024, 0.0022, "left", "2.4 mm"),
    ),
    long_term_m_per_year=0.00042,
    short_term_m_per_year=0.00044,
    floor_m_per_year=0.0001,
    rate_m_per_year=0.00044,
    rate_because="short-term rate, between the last two readings",
    wall_now_m=0.0022,
    estimated=False,
    life_years=0.0,
    reaches_required_on=date(2026, 6, 13),
    next_reading_due=None,
)


def reason(sentence: str, value: str, limit: str, source: str, outcome: Outcome = Outcome.RETIRE) -> Reason:
    return Reason(outcome, Status.FAILS, sentence, value, limit, source, "wall-required")


@pytest.fixture
def tube_notice() -> RetirementNotice:
    """A receiver rusted through from inside."""
    return a_notice()


def a_notice() -> RetirementNotice:
    """The same, made."""
    piece = (
        Fact("Made by", "no mark"),
        Fact("Marked", "3,500 kg"),
        Fact("In service since", "4 November 2017"),
        Fact("Fitted to", "V-01"),
        Fact("Size", "63.5 mm outside, 6.3 mm wall"),
        Fact("Used", "41 pulls, 29 days in salt water"),
    )
    reasons = (
        reason(
            "The wall is thinner than the pin needs.",
            "2.2 mm (read 2.4 mm at “left”, 12 June 2026)",
            "at least 3.0 mm",
            "API 510 7.1.1, used on gear by analogy only",
        ),
        reason(
            "Less than half of the wall as new is left.",
            "35 % of 6.3 mm",
            "at least 50 %",
            "club setting",
            Outcome.HOLD,
        ),
        reason("Rust flakes come out of the tube.", "seen, bad", "none", "common practice, no published source"),
    )
    sums = (
        Fact("Wall as new", "6.3 mm"),
        Fact("Long-term rate", "0.42 mm a year"),
        Fact("Short-term rate", "0.44 mm a year"),
        Fact("Remaining life", "0 years"),
    )
    return RetirementNotice(
        imprint("Retirement notice", "A-2026-0114"),
        "T-014",
        "Hitch receiver",
        "receiver",
        "Sandbar Touring Club",
        piece,
        "The tube has rusted from inside until the hitch pin could tear out of it at a load it is marked for.",
        reasons,
        sums,
        WALL,
        date(2026, 6, 13),
        "No recovery, no towing, no tie-down, no spare part for another vehicle.",
        "Cut the tube through across the pin hole with a saw or grinder, then flatten the cut end.",
        "A receiver rated for at least 3,500 kg with its rating plate, and a hitch pin of the same rating.",
    )


@pytest.fixture
def ball_notice(tube_notice: RetirementNotice) -> RetirementNotice:
    """A tow ball that was pulled on."""
    reasons = (
        reason(
            "It was used for a recovery pull.", "2 pulls, 3 May 2026", "none", "common practice, no published source"
        ),
        reason("The neck is bent.", "seen, bad", "no visible bend", "common practice, no published source"),
    )
    return replace(
        tube_notice,
        tag="B-007",
        kind_name="Tow ball",
        family="ball",
        piece=tube_notice.piece[:3],
        plain="A ball that was pulled on may carry a crack nobody can see; it can snap off and fly at the next load.",
        reasons=reasons,
        sums=(),
        wall=None,
        replace_by="A tow ball with the same or a higher rating for towing; a rated recovery point for pulls.",
    )


@pytest.fixture
def many_pieces(trip_sheet: TripSheet) -> Callable[[int], TripSheet]:
    """The sheet with this many pieces that go."""
    return lambda count: replace(trip_sheet, going=going(count))


def going(count: int) -> tuple[GoingPiece, ...]:
    """So many pieces that go."""
    return tuple(strap(f"S-{n:03}") if n % 3 else shackle(f"K-{n:03}") for n in range(1, count + 1))


@pytest.fixture
def thinned() -> Capacity:
    """The strength of a receiver, reckoned from its sizes; two ways to give way and what is left out."""
    because = "steel taken as weak as 235 MPa in yield, since nobody knows it"
    crushed = SteelStrength("pin_bearing", "the pin crushes the two walls", 67e3, 25e3, 25 / 67, 10e3, because, "s")
    torn = SteelStrength("tube_net", "the whole tube pulls apart", 320e3, 120e3, 0.375, 90e3, because, "s")
    lost = CapacityStep("steel_loss.pin_bearing", 1 - 25 / 67, 25e3, "s", "Steel lost (the pin crushes the two walls)")
    left_out = ("tearing out behind the pin hole: the distance to the end was not measured",)
    return Capacity(None, 25e3, (lost,), as_new_n=67e3, strengths=(crushed, torn), left_out=left_out)

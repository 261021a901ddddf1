"""Check a rig, propose the best one of a trip's kit, tell which vehicles can bring out which, and propose a kit.

Everything is judged for the trip's last day on what is known today; without a trip, for today. Nothing is kept.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from datetime import date
from itertools import permutations

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties import look_up
from inspector.duties.before_use import goes
from inspector.duties.debrief import Shares
from inspector.duties.elsewhere import away, lent_away, not_to_be_had, stays_with_owner
from inspector.duties.judging import judged
from inspector.duties.keep_rigs import rig as kept_rig
from inspector.duties.keep_vehicles import kept_words
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip
from inspector.duties.rig_parts import known_parts, pieces_of
from inspector.duties.tell_whereabouts import gone_words
from inspector.duties.trip_readiness import Ready
from inspector.duties.who import check_vehicle_not_evidence
from inspector.gear.debrief import RigUsed
from inspector.gear.packing import Packed
from inspector.gear.rig import Conditions, Footing, Method, Rig, RigFacts, RigPiece
from inspector.gear.rig_result import LeftOut, PairLine, Proposed, RigResult
from inspector.gear.trip import Ground, Trip
from inspector.language import tr
from inspector.refused import Refused
from inspector.rulebook.rigs.advice import check_rig
from inspector.rulebook.rigs.limits import Asked
from inspector.rulebook.rigs.packing import pack
from inspector.rulebook.rigs.pairs import pairs
from inspector.rulebook.rigs.propose import propose

_TWO_LINES = 2.0
_NOTHING = Rig("", Method.KINETIC, "", "", ())
_STANDS_IN = {  # what a vehicle is likely stuck in, and what the other one stands on, where nobody said better
    Ground.BEACH: (Footing.SOFT_DRY_SAND, Footing.SOFT_DRY_SAND),
    Ground.MUD: (Footing.WHEEL_DEEP_MUD, Footing.SHALLOW_MUD),
    Ground.GRAVEL: (Footing.GRAVEL, Footing.GRAVEL),
    Ground.ROCK: (None, Footing.HARD_ROAD),
    Ground.SNOW: (None, None),
}


class TripPairs(Struct, frozen=True):
    """Which pairs of a trip's vehicles have a sound rig, and under which conditions that was asked."""

    trip: Trip
    on: date
    conditions: Conditions
    lines: tuple[PairLine, ...]


def conditions_of(trip: Trip) -> Conditions:
    """What the trip's ground says of a pull; everything else is left unsaid, so that the severe assumption stands."""
    bogged_in, pulling_on = _STANDS_IN[trip.ground]
    return Conditions(bogged_in=bogged_in, pulling_on=pulling_on)


def work_rig(office: Office, rig: Rig) -> RigResult:
    """Check a rig. If it names a trip, the rest of that trip's kit is tried in it for advice."""
    with office.book.reading() as page:
        known = known_parts(page, rig, office.rules)
    planned = look_up.trip(office, known.trip) if known.trip else None
    tags = dict.fromkeys([*known.tags, *known.dampers, *(planned.kit if planned else ())])
    vehicles = [tag for tag in (known.bogged, known.pulling) if tag]
    facts = _facts(office, planned, [tag for tag in tags if "@" not in tag], vehicles)
    absent = _absent(office, [*facts.pieces], vehicles)
    here = {tag: one for tag, one in facts.pieces.items() if tag not in absent or tag in known.tags}
    facts = replace(facts, rig=known, pieces=here, absent=absent)
    return check_rig(facts, office.rules, office.program, office.system)


def _absent(office: Office, tags: list[str], vehicles: list[str]) -> dict[str, str]:
    """By tag, why a piece or a vehicle is not to be had: gone from the club, or kept as it was found."""
    with office.book.reading() as page:
        kept = page.kept_vehicles()
        found = not_to_be_had(page, tags)
    return found | {tag: said for tag in vehicles if (said := kept_words(kept, tag))}


def work_kept_rig(office: Office, ref: str) -> RigResult:
    """Check a rig that was kept under a reference."""
    return work_rig(office, kept_rig(office, ref).rig)


def propose_rig(
    office: Office, ref: str, method: Method, pulling: str, bogged: str, conditions: Conditions | None = None
) -> Proposed:
    """The best rig of a trip's kit for two of its vehicles, and why each piece was left out."""
    planned = look_up.trip(office, ref)
    for name, tag in ((tr("pulling"), pulling), (tr("bogged"), bogged)):
        if tag not in planned.vehicles:
            why = tr("{tag} does not go on the trip {ref}.", tag=tag or tr("nobody"), ref=planned.ref)
            raise Refused(name, why, tr("Use one of: {tags}.", tags=", ".join(planned.vehicles)))
    if pulling == bogged:
        raise Refused(tr("pulling"), tr("One vehicle cannot pull itself."), tr("Name another vehicle of the trip."))
    with office.book.reading() as page:
        lent = lent_away(office, page, planned)
        for tag in (pulling, bogged):
            check_vehicle_not_evidence(page, tag)
    facts = _without(_facts(office, planned, planned.kit, [bogged, pulling]), lent)
    asked = Asked(method, pulling, bogged, conditions or conditions_of(planned))
    found = propose(asked, facts, office.rules, office.program, office.system)
    gone = tuple(LeftOut(tag, why) for tag, why in lent.items())
    found = replace(found, left_out=tuple(sorted((*found.left_out, *gone), key=lambda one: one.tag)))
    if found.result is None:
        return found
    return replace(found, result=replace(found.result, rig=replace(found.result.rig, trip=planned.ref)))


def pair_trip(
    office: Office,
    ref: str,
    conditions: Conditions | None = None,
    ready: Ready | None = None,
) -> TripPairs:
    """For each two vehicles of a trip, whether its kit makes a sound rig.

    ready: the readiness of the trip, if it is at hand: nothing is judged twice.
    """
    planned = ready.trip if ready else look_up.trip(office, ref)
    asked = conditions or conditions_of(planned)
    facts = _facts_of(office, ready) if ready else _facts(office, planned, planned.kit, planned.vehicles)
    with office.book.reading() as page:
        facts = _without(facts, lent_away(office, page, planned))
        kept_for = page.kept_vehicles()
    kept = {tag: said for tag in planned.vehicles if (said := kept_words(kept_for, tag))}
    dampers = tuple(tag for tag, one in facts.pieces.items() if one.kind == "damper" and goes(one.judged))[:1]
    facts = replace(facts, rig=replace(_NOTHING, conditions=asked, dampers=dampers))
    serving = tuple(tag for tag in planned.vehicles if tag not in kept)
    lines = pairs(facts, serving, office.rules, office.program, office.system, office.told)
    return TripPairs(planned, facts.on, asked, (*lines, *_kept_pairs(planned, kept)))


def _kept_pairs(planned: Trip, kept: Mapping[str, str]) -> Iterator[PairLine]:
    """The pairs with a vehicle that is evidence and does not serve."""
    for pulling, bogged in permutations(planned.vehicles, 2):
        if said := " ".join(kept[tag] for tag in (pulling, bogged) if tag in kept):
            yield PairLine(Method.KINETIC.value, pulling, bogged, None, said)


def pack_trip(office: Office, ref: str) -> Packed:
    """A kit by need for a trip, from what is fit on its last day, neither lent, fitted nor in another kit on its days.

    A member's own gear is packed only where that member goes.
    """
    planned = look_up.trip(office, ref)
    with office.book.reading() as page:
        places = page.fittings()
        store = [item for item in page.not_retired() if item.id not in places]
        gone = stays_with_owner(page, planned, store)
        gone |= {one.tag: one.why for one in away(office, page, planned, [item.tag for item in store])}
        gone |= {one.item.tag: tr("It is out on loan.") for one in page.out()}
        here = page.whereabouts(store)
        gone |= {item.tag: why for item in store if (why := gone_words(here[item.id], {}))}
    found = _packed(office, planned, [item.tag for item in store if item.tag not in gone])
    return replace(found, stays=tuple(sorted((*found.stays, *gone.items()))))


def kit_lacks(office: Office, ref: str, ready: Ready | None = None) -> tuple[str, ...]:
    """What the kit of a trip lacks for its vehicles, by the needs that a kit is packed by.

    ready: the readiness of the trip, if it is at hand: nothing is judged twice.
    """
    if ready is None:
        planned = look_up.trip(office, ref)
        return _packed(office, planned, planned.kit).lacks
    facts = _facts_of(office, replace(ready, staying=(*ready.staying, *ready.gone)))
    return _packed(office, ready.trip, ready.trip.kit, facts).lacks


def _packed(office: Office, planned: Trip, tags: Iterable[str], judged_so: RigFacts | None = None) -> Packed:
    """A kit by need from these pieces. What sits on a vehicle of the trip serves there and is not packed."""
    at_hand = dict.fromkeys(tags)
    facts = judged_so or _facts(office, planned, at_hand, planned.vehicles)
    loose = [one for tag, one in facts.pieces.items() if tag in at_hand and one.fitted is None]
    with office.book.reading() as page:
        kept = page.kept_vehicles()
    serving = [tag for tag in planned.vehicles if tag not in kept]
    fitted = [one for one in facts.pieces.values() if one.fitted and one.fitted.vehicle in serving]
    cars = tuple(facts.vehicles[tag] for tag in serving)
    return pack(loose, fitted, cars, office.rules, office.system)


def _facts(office: Office, planned: Trip | None, tags: Iterable[str], vehicles: Iterable[str]) -> RigFacts:
    """The pieces and the parts on the vehicles, judged for the day."""
    on = max(office.today, planned.last_on) if planned else office.today
    with office.book.reading() as page:
        known = {one.tag: one for one in page.vehicles()}
        items = page.items(list(tags))
        parts = page.fitted_items([tag for tag in vehicles if tag in known])
        every = {item.id: item for item in (*items.values(), *(item for item, _ in parts))}
        dossiers = page.dossiers([(item, office.kind(item.facts.kind)) for item in every.values()], on)
        places = page.fittings()
    pieces = {one.item.tag: RigPiece(judged(office, one), places.get(one.item.id)) for one in dossiers}
    return RigFacts(_NOTHING, on, pieces, known)


def _without(facts: RigFacts, gone: Collection[str]) -> RigFacts:
    """The facts without pieces that are not at hand; what sits on a vehicle stays there."""
    kept = {tag: one for tag, one in facts.pieces.items() if tag not in gone or one.fitted is not None}
    return replace(facts, pieces=kept)


def _facts_of(office: Office, ready: Ready) -> RigFacts:
    """The pieces as the trip's readiness has judged them."""
    with office.book.reading() as page:
        known = {one.tag: one for one in page.vehicles()}
        places = page.fittings()
    parts = [part.judged for vehicle in ready.vehicles for part in vehicle.parts]
    every = (*ready.going, *ready.staying, *parts)
    pieces = {one.dossier.item.tag: RigPiece(one, places.get(one.dossier.item.id)) for one in every}
    return RigFacts(_NOTHING, ready.on, pieces, known)


def set_kit(office: Office, ref: str, found: Packed) -> Trip:
    """Make a proposed kit the kit of the trip; the kit before it stays in the trip's history."""
    tags = tuple(one.tag for one in found.takes)
    return change_trip(office, ref, lambda stands: replace(stands, kit=tags), tr("kit by need"))


def shares_of(office: Office) -> Shares:
    """For a debrief: which share of the pull in the line each part of a rig bore.

    Where it cannot be told all of it, or twice that where a block is in the rig: no part bears more than two lines.
    """

    def told(used: RigUsed) -> dict[str, float]:
        try:
            found = work_rig(office, replace(used.rig, trip=""))
        except Refused:
            return dict.fromkeys(used.rig.tags, _TWO_LINES) if _has_block(office, used.rig) else {}
        pull_n = found.load.pull_n
        return {one.tag: one.force_n / pull_n for one in found.links} if pull_n > 0 else {}

    return told


def _has_block(office: Office, rig: Rig) -> bool:
    with office.book.reading() as page:
        return any(office.rules.roles[item.facts.kind].key == "block" for item in pieces_of(page, rig))

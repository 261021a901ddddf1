"""What was there when it happened: the rig, its pieces, the vehicles and every part on them, on the day.

Rather too much is kept than too little: every part of every vehicle of the rig, and every vehicle that a named piece
sat on that day.
"""

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.judging import judged
from inspector.duties.office import Office
from inspector.duties.rig_parts import known_parts, pieces_of, sat_on, with_bars
from inspector.gear.fitting import Fitted
from inspector.gear.incident import Gravity, NewIncident, StoodThen
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.rig import GROUND, Rig, RigFacts, RigPiece
from inspector.gear.rig_result import RigResult
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.rows import to_body
from inspector.rulebook.rigs.advice import check_rig

_Places = dict[str, tuple[Fitted, ...]]


class Scene(Struct, frozen=True):
    """The rig as the register writes it, the pieces and the tags of the vehicles."""

    rig: Rig | None
    pieces: tuple[Item, ...]
    vehicles: tuple[str, ...]


def scene(office: Office, page: Page, told: NewIncident) -> Scene:
    """What was there by what was told; refused where a tag is unknown.

    Of a near miss only the pieces that bore the pull, with the tow bars behind receivers.
    """
    rig = known_parts(page, told.rig, office.rules) if told.rig else None
    named = [*(pieces_of(page, rig) if rig else ()), *(page.item(tag) for tag in told.pieces)]
    pieces = tuple(dict.fromkeys(named))
    cars = [page.vehicle(tag).tag for tag in told.vehicles] + (_vehicles_of(rig) if rig else [])
    if told.gravity is Gravity.NEAR_MISS:
        return Scene(rig, with_bars(page, pieces, told.on), tuple(dict.fromkeys(cars)))
    every = page.all_fittings()
    places = {item.id: sat_on(item, moves, told.on) for item, moves in every}
    cars += [place.vehicle for item in pieces for place in places.get(item.id, ())]
    vehicles = tuple(dict.fromkeys(cars))
    fitted = (item for item, _ in every if any(place.vehicle in vehicles for place in places[item.id]))
    return Scene(rig, tuple(dict.fromkeys((*pieces, *fitted))), vehicles)


def _vehicles_of(rig: Rig) -> list[str]:
    loose = [tag.partition("@")[2] for tag in rig.tags if "@" in tag]
    return [tag for tag in (rig.bogged, rig.pulling, *loose) if tag and tag != GROUND]


def stood_then(page: Page, items: Iterable[Item], told: NewIncident) -> tuple[StoodThen, ...]:
    """How each piece stood on the day: the verdict that was stored last for it or an earlier day, and who had it."""
    return tuple(_stood(page, item, told) for item in items)


def _stood(page: Page, item: Item, told: NewIncident) -> StoodThen:
    holder, found = page.held_by_on(item, told.on), page.stood_on(item, told.on)
    if found is None:
        return StoodThen(item.tag, Outcome.HOLD, tr("Nobody had judged it by that day."), holder, "")
    key, verdict, words = found
    return StoodThen(item.tag, verdict.outcome, words.headline, holder, key)


def rig_as_it_stood(office: Office, page: Page, found: Scene, told: NewIncident) -> tuple[str, str]:
    """The rig's sum on the facts of the day as JSON, and where none can be made why not."""
    if found.rig is None:
        return "", tr("Nobody wrote down how it was rigged.")
    try:
        result = _checked(office, page, found, found.rig, told)
    except Refused as refusal:
        return "", f"{refusal.field}: {refusal.why}"
    return to_body(result), ""


def _checked(office: Office, page: Page, found: Scene, rig: Rig, told: NewIncident) -> RigResult:
    asked = [(item, office.kind(item.facts.kind)) for item in found.pieces]
    pieces = {
        one.item.tag: RigPiece(judged(office, one), one.item.facts.fitted) for one in page.dossiers(asked, told.on)
    }
    vehicles = {one.tag: one for one in page.vehicles()}
    facts = RigFacts(replace(rig, trip=""), told.on, pieces, vehicles)
    result = check_rig(facts, office.rules, office.program, office.system)
    return replace(result, rig=rig)

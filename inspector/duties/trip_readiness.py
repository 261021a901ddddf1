"""Whether a trip is ready: every piece of its kit and every part on its vehicles, judged for the trip's last day."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from datetime import date

from msgspec import Struct, field
from msgspec.structs import replace

from inspector.duties.before_use import goes
from inspector.duties.due_days import verdict_days
from inspector.duties.elsewhere import Away, away, not_to_be_had
from inspector.duties.judging import judged
from inspector.duties.keep_vehicles import kept_words, overload_words
from inspector.duties.look_up import trip
from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import brief_words
from inspector.duties.vehicle_record import place_order
from inspector.gear.dossier import Dossier
from inspector.gear.falls_due import Due
from inspector.gear.fitting import Fitted, Fitting
from inspector.gear.inspection import Inspection
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Trip, Vehicle
from inspector.gear.verdict import Verdict
from inspector.gear.whereabouts import Where
from inspector.register.page import Page
from inspector.rulebook.judge import judge
from inspector.rulebook.words import place_words


class FallsDue(Struct, frozen=True):
    """Something that falls due before or during the trip; overdue: it fell due before today."""

    tag: str
    kind_name: str
    what: Due
    on: date
    overdue: bool


class Turns(Struct, frozen=True):
    """A piece whose verdict on the last day is another than today's, as a whole or for one use."""

    today: Outcome
    then: Judged


class PartReady(Struct, frozen=True):
    """A part on a vehicle of the trip; place: where on it, in words, empty where nobody wrote it down.

    moved_on: it was fitted there that day, and no competent person has inspected it since.
    """

    fitted: Fitted
    place: str
    judged: Judged
    moved_on: date | None = None


class VehicleReady(Struct, frozen=True):
    """A vehicle of the trip with its parts, front to rear. warning: what must be said of it, empty for nothing."""

    vehicle: Vehicle
    parts: tuple[PartReady, ...]
    warning: str = ""


class Ready(Struct, frozen=True):
    """A trip's kit judged for its last day: the pieces that go and those that stay, in the order of the walk round.

    on: the day they are judged for, today for a trip that is over. due and turning speak of the kit and of the parts
    on the vehicles, on what is known today. away: pieces of the kit that may not be at hand, whatever their verdict;
    gone: those of them that would go by their verdict, and that the club has not or must leave as they were found.
    lies: where each piece of the kit is now, in words, by tag; left out where nobody wrote it down. barred: parts and
    pieces on the vehicles that may not be used whatever their verdict, by tag, and why.
    """

    trip: Trip
    going: tuple[Judged, ...]
    staying: tuple[Judged, ...]
    on: date
    due: tuple[FallsDue, ...] = ()
    turning: tuple[Turns, ...] = ()
    vehicles: tuple[VehicleReady, ...] = ()
    away: tuple[Away, ...] = ()
    gone: tuple[Judged, ...] = ()
    lies: Mapping[str, str] = field(default_factory=dict)
    barred: Mapping[str, str] = field(default_factory=dict)

    @property
    def sits(self) -> dict[str, str]:
        """The vehicle of the trip that a part sits on, by the part's tag."""
        return {_tag(part.judged): one.vehicle.tag for one in self.vehicles for part in one.parts}


class Walk(Struct, frozen=True):
    """All that is looked at before a trip: the parts by vehicle, front to rear, and what is loose in the kit.

    barred: parts that may not be used whatever their verdict, by tag, and why. lies: as of Ready.
    """

    vehicles: tuple[VehicleReady, ...]
    bag: tuple[Judged, ...]
    barred: Mapping[str, str]
    lies: Mapping[str, str]


class _Facts(Struct, frozen=True):
    """What is read for a trip, each piece once: its dossiers by id, and where the parts sit."""

    kit: tuple[str, ...]
    dossiers: dict[str, Dossier]
    sits: tuple[tuple[Item, Fitted], ...]
    moves: dict[str, Fitting]
    vehicles: tuple[Vehicle, ...]
    kept: dict[str, str]  # vehicles that are evidence, by tag, in words


def readiness(office: Office, ref: str) -> Ready:
    """Judge the kit and the fitted parts for the trip's last day. A piece goes if any purpose is open to it."""
    planned = trip(office, ref)
    on = max(office.today, planned.last_on)
    with office.book.reading() as page:
        facts = _facts(office, page, planned, on)
        elsewhere = away(office, page, planned, planned.kit)
        lies = lies_words(page, planned.kit)
        barred = barred_parts(page, facts.sits)
    then = {key: judged(office, one) for key, one in facts.dossiers.items()}
    today = {key: _today(office, one, then[key]) for key, one in facts.dossiers.items()}
    kit = _walked(then[key] for key in facts.kit)
    absent = {one.tag for one in elsewhere if one.lent}
    return Ready(
        trip=planned,
        going=tuple(one for one in kit if goes(one) and _tag(one) not in absent),
        gone=tuple(one for one in kit if goes(one) and _tag(one) in absent),
        staying=tuple(one for one in kit if not goes(one)),
        on=on,
        due=tuple(sorted(_due(office, then.values(), today, on), key=lambda one: (one.on, one.tag))),
        turning=tuple(Turns(today[key].outcome, one) for key, one in then.items() if _turns(today[key], one.verdict)),
        vehicles=tuple(_vehicle(one, facts, then) for one in facts.vehicles),
        away=elsewhere,
        lies=lies,
        barred=barred,
    )


def walk_round(office: Office, planned: Trip) -> Walk:
    """Every part on the vehicles and every loose piece of the kit, judged for the trip's last day."""
    on = max(office.today, planned.last_on)
    with office.book.reading() as page:
        facts = _facts(office, page, planned, on)
        barred = barred_parts(page, facts.sits)
        lies = lies_words(page, planned.kit)
    then = {key: judged(office, one) for key, one in facts.dossiers.items()}
    sits = {item.id for item, _ in facts.sits}
    return Walk(
        vehicles=tuple(_vehicle(one, facts, then) for one in facts.vehicles),
        bag=_walked(then[key] for key in facts.kit if key not in sits),
        barred=barred,
        lies=lies,
    )


def barred_parts(page: Page, sits: Iterable[tuple[Item, Fitted]]) -> dict[str, str]:
    """Of parts on vehicles, by tag, those that stay as they are: gone, or evidence, as a part or with the vehicle."""
    places = {item.tag: fitted.vehicle for item, fitted in sits}
    kept = page.kept_vehicles()
    by_vehicle = {tag: said for tag, vehicle in places.items() if (said := kept_words(kept, vehicle))}
    return by_vehicle | not_to_be_had(page, list(places))


def lies_words(page: Page, tags: Collection[str]) -> dict[str, str]:
    """Where pieces lie now, by tag; left out where nobody wrote down at which place in store."""
    names = {one.id: one.name for one in page.people()}
    items = page.items(tuple(tags))
    found = page.whereabouts(list(items.values()))
    where = {tag: found[one.id] for tag, one in items.items()}
    return {tag: brief_words(one, names) for tag, one in where.items() if one.at or one.where is not Where.IN_STORE}


def _walked(kit: Iterable[Judged]) -> tuple[Judged, ...]:
    """In the order of the walk round."""
    return tuple(sorted(kit, key=lambda one: (one.dossier.kind.look_first, _tag(one))))


def _tag(one: Judged) -> str:
    return one.dossier.item.tag


def _facts(office: Office, page: Page, planned: Trip, on: date) -> _Facts:
    found = page.items(planned.kit)
    kit = [found[tag] for tag in planned.kit]
    sits = page.fitted_items(planned.vehicles)
    every = {item.id: item for item in (*kit, *(item for item, _ in sits))}
    dossiers = page.dossiers([(item, office.kind(item.facts.kind)) for item in every.values()], on)
    by_tag = {one.tag: one for one in page.vehicles()}
    kept = page.kept_vehicles()
    return _Facts(
        kit=tuple(item.id for item in kit),
        dossiers={one.item.id: one for one in dossiers},
        sits=sits,
        moves=page.last_fittings(),
        vehicles=tuple(by_tag[tag] for tag in planned.vehicles),
        kept={tag: kept_words(kept, tag) for tag in planned.vehicles},
    )


def _today(office: Office, dossier: Dossier, then: Judged) -> Verdict:
    """The verdict of today on the same facts; no fact is younger than today."""
    if dossier.on == office.today:
        return then.verdict
    return judge(replace(dossier, on=office.today), office.rules, office.program)


def _turns(today: Verdict, then: Verdict) -> bool:
    return (today.outcome, today.by_purpose) != (then.outcome, then.by_purpose)


def _due(office: Office, pieces: Iterable[Judged], today: dict[str, Verdict], until: date) -> Iterator[FallsDue]:
    """What falls due by the last day."""
    for one in pieces:
        back = one.dossier.item.facts.borrowed_until
        days = verdict_days(today[one.dossier.item.id]) | ({Due.BACK: back} if back else {})
        for what, day in days.items():
            if day <= until:
                yield FallsDue(_tag(one), one.dossier.kind.name, what, day, day < office.today)


def _vehicle(vehicle: Vehicle, facts: _Facts, then: dict[str, Judged]) -> VehicleReady:
    parts = [
        PartReady(
            fitted,
            place_words(fitted),
            then[item.id],
            _unseen_since(facts.moves.get(item.id), then[item.id].dossier),
        )
        for item, fitted in facts.sits
        if fitted.vehicle == vehicle.tag
    ]
    parts.sort(key=lambda one: (*place_order(one.fitted), _tag(one.judged)))
    warnings = (facts.kept[vehicle.tag], overload_words(vehicle))
    return VehicleReady(vehicle, tuple(parts), " ".join(one for one in warnings if one))


def _unseen_since(moved: Fitting | None, dossier: Dossier) -> date | None:
    """The day of a fitting that no competent person's inspection has followed: how it holds there nobody has seen."""
    if moved is None or any(_looked_after(one, moved) for one in dossier.inspections):
        return None
    return moved.facts.on


def _looked_after(inspection: Inspection, moved: Fitting) -> bool:
    """On one day the order of entry decides."""
    after = (inspection.facts.on, inspection.id) > (moved.facts.on, moved.id)
    return inspection.facts.competent and after

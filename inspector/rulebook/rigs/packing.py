"""A trip's kit by need: what its vehicles ask for, from what is fit and at hand, and what is lacking."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.packing import Packed, Taken
from inspector.gear.rig import RigPiece
from inspector.gear.trip import Vehicle
from inspector.language import tr, tr_n
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.links import barred_why, own_strength
from inspector.rulebook.rigs.strap_band import SUITS, band_words, strap_band, strap_fit
from inspector.units import System

_CONNECTORS = {"shackle", "soft"}
_PURPOSES = {
    "winch": Purpose.STATIC,
    "line": Purpose.STATIC,
    "block": Purpose.STATIC,
    "around": Purpose.STATIC,
    "strap": Purpose.STATIC,
}


@dataclass(slots=True)
class _Packing:
    """The kit as it fills."""

    book: Rulebook
    free: list[RigPiece]
    takes: list[Taken] = field(default_factory=list)
    lacks: list[str] = field(default_factory=list)

    def role(self, piece: RigPiece) -> str:
        """What the piece is in a rig."""
        return self.book.roles[piece.kind].key

    def take(self, piece: RigPiece, need: str) -> None:
        """Put a piece into the kit."""
        self.free.remove(piece)
        self.takes.append(Taken(piece.tag, piece.judged.dossier.kind.name, need))

    def best(self, *roles: str) -> list[RigPiece]:
        """Free pieces of these roles, the strongest first."""
        found = [one for one in self.free if self.role(one) in roles]
        return sorted(found, key=lambda one: (-_strength(one, self.role(one)), one.tag))

    def want(self, count: int, need: str, *roles: str) -> None:
        """Take so many of these roles, and tell how many are lacking."""
        chosen = self.best(*roles)[:count]
        for piece in chosen:
            self.take(piece, need)
        if len(chosen) < count:
            open_count = count - len(chosen)
            said = tr_n("{need}: one more is wanted.", "{need}: {count} more are wanted.", open_count, need=need)
            self.lacks.append(said)


def _strength(piece: RigPiece, role: str) -> float:
    return own_strength(piece, role)[0] or 0.0


def pack(
    store: Iterable[RigPiece], fitted: Iterable[RigPiece], vehicles: tuple[Vehicle, ...], book: Rulebook, system: System
) -> Packed:
    """The kit. store: pieces at hand, judged for the trip's last day; fitted: parts on the trip's vehicles."""
    fit, stays = _sorted_out(store, book)
    parts = [one for one in fitted if not _unable(one, book)]
    packing = _Packing(book, fit)
    _straps(packing, vehicles, system)
    packing.want(int(book.setting("pack_connectors")), tr("Joining lines to vehicles"), *_CONNECTORS)
    packing.want(int(book.setting("pack_dampers")), tr("Laying over the line"), "damper")
    _inserts(packing, parts, vehicles)
    if any(_has_two_points(parts, one.tag, book) for one in vehicles):
        packing.want(1, tr("Sharing a pull between two points"), "bridle")
    packing.want(1, tr("A steady tow-out, or more reach"), "strap")
    if any(book.roles[one.kind].key == "winch" for one in parts):
        packing.want(1, tr("Fixing a winch line to a tree"), "around")
        packing.want(1, tr("Turning or doubling a winch line"), "block")
    left = [(one.tag, tr("Not needed for these vehicles.")) for one in packing.free]
    return Packed(tuple(packing.takes), tuple(packing.lacks), tuple(sorted([*stays, *left])))


def _sorted_out(store: Iterable[RigPiece], book: Rulebook) -> tuple[list[RigPiece], list[tuple[str, str]]]:
    fit: list[RigPiece] = []
    stays: list[tuple[str, str]] = []
    for piece in store:
        why = _unable(piece, book)
        if why:
            stays.append((piece.tag, why))
        else:
            fit.append(piece)
    return fit, stays


def _unable(piece: RigPiece, book: Rulebook) -> str:
    """Why a piece cannot go: held, retired, barred or of unknown strength; empty where it can."""
    role = book.roles[piece.kind].key
    if role in {"ball", "ball_mount"}:
        return tr("It is for towing a trailer; no recovery is fixed to it.")
    if role == "damper":
        outcome = piece.judged.verdict.outcome
        return "" if outcome in {Outcome.FIT, Outcome.DERATE} else tr("It is on hold or retired.")
    why = barred_why(piece, _PURPOSES.get(role, Purpose.KINETIC))
    if why or role == "winch":
        return why
    return own_strength(piece, role)[1]


def _straps(packing: _Packing, vehicles: tuple[Vehicle, ...], system: System) -> None:
    """As few kinetic straps as suit every vehicle as the lighter one, then the spares."""
    book, open_ones = packing.book, list(vehicles)
    while open_ones:
        straps = packing.best("stretch")
        suited = {one.tag: [car for car in open_ones if _suits(one, car, book)] for one in straps}
        chosen = max(straps, key=lambda one: (len(suited[one.tag]), -_strength(one, "stretch")), default=None)
        if chosen is None or not suited[chosen.tag]:
            break
        for_tags = ", ".join(car.tag for car in suited[chosen.tag])
        packing.take(chosen, tr("Kinetic pull with {vehicles} as the lighter vehicle", vehicles=for_tags))
        open_ones = [car for car in open_ones if car not in suited[chosen.tag]]
    for car in open_ones:
        band = band_words(strap_band(book, car.gvm.si), system)
        packing.lacks.append(tr("A kinetic strap for {vehicle}: {band}.", vehicle=car.tag, band=band))
    spares = [one for one in packing.best("stretch") if any(_suits(one, car, book) for car in vehicles)]
    wanted = int(book.setting("pack_spare_straps"))
    for piece in spares[:wanted]:
        packing.take(piece, tr("Spare, should a strap be damaged"))
    if len(spares) < wanted:
        packing.lacks.append(tr("A spare kinetic strap."))


def _suits(piece: RigPiece, vehicle: Vehicle, book: Rulebook) -> bool:
    """Whether a strap lies in the band, not too weak now and not too stiff by its marking."""
    capacity = piece.judged.verdict.capacity
    if capacity.now_n is None or capacity.begins_n is None:
        return False
    return {strap_fit(book, vehicle.gvm.si, force_n) for force_n in (capacity.now_n, capacity.begins_n)} == {SUITS}


def _inserts(packing: _Packing, parts: list[RigPiece], vehicles: tuple[Vehicle, ...]) -> None:
    """A pin and an insert for the vehicles that have a fit receiver; one more where two have nothing else."""

    def has(vehicle: Vehicle, role: str) -> bool:
        return any(packing.role(one) == role and one.fitted and one.fitted.vehicle == vehicle.tag for one in parts)

    with_receiver = [one for one in vehicles if has(one, "receiver")]
    only = [one for one in with_receiver if not has(one, "point")]
    for vehicle in vehicles:
        if not has(vehicle, "receiver") and not has(vehicle, "point"):
            packing.lacks.append(tr("A fit recovery point or receiver on {vehicle}.", vehicle=vehicle.tag))
    count = min(max(len(only), 1), 2) if with_receiver else 0
    packing.want(count, tr("Holding an insert in a receiver"), "pin")
    packing.want(count, tr("Fixing a shackle to a receiver"), "insert")


def _has_two_points(parts: list[RigPiece], vehicle: str, book: Rulebook) -> bool:
    ends = [
        one.fitted.end
        for one in parts
        if one.fitted and one.fitted.vehicle == vehicle and book.roles[one.kind].key == "point"
    ]
    return any(end and ends.count(end) > 1 for end in ends)

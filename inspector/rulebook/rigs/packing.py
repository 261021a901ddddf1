"""A trip's kit by need: what its vehicles ask for, from what is fit and at hand, and what is lacking."""

from collections.abc import Iterable

from msgspec import Struct, field

from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.packing import Packed, Taken
from inspector.gear.rig import RigPiece
from inspector.gear.trip import Vehicle
from inspector.language import tr, tr_n
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.fits import goes_with, pin_passes
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


class _Packing(Struct):
    """The kit as it fills. parts: what sits on the vehicles and may be used."""

    book: Rulebook
    free: list[RigPiece]
    parts: list[RigPiece]
    takes: list[Taken] = field(default_factory=list)
    taken: list[RigPiece] = field(default_factory=list)
    lacks: list[str] = field(default_factory=list)
    misfits: dict[str, str] = field(default_factory=dict)

    def role(self, piece: RigPiece) -> str:
        """What the piece is in a rig."""
        return self.book.roles[piece.kind].key

    def fitted(self, role: str) -> list[RigPiece]:
        """The parts of a role on the vehicles."""
        return [one for one in self.parts if self.role(one) == role]

    def leave(self, misfits: Iterable[RigPiece], why: str) -> None:
        """Leave at home what goes together with nothing there is."""
        for one in misfits:
            self.misfits[one.tag] = why
            self.free.remove(one)

    def take(self, piece: RigPiece, need: str) -> None:
        """Put a piece into the kit."""
        self.free.remove(piece)
        self.taken.append(piece)
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
    packing = _Packing(book, fit, parts)
    _straps(packing, vehicles, system)
    _inserts(packing, vehicles)
    _connectors(packing)
    packing.want(int(book.setting("pack_dampers")), tr("Laying over the line"), "damper")
    if any(_has_two_points(parts, one.tag, book) for one in vehicles):
        packing.want(1, tr("Sharing a pull between two points"), "bridle")
    packing.want(1, tr("A steady tow-out, or more reach"), "strap")
    if any(book.roles[one.kind].key == "winch" for one in parts):
        packing.want(1, tr("Fixing a winch line to a tree"), "around")
        packing.want(1, tr("Turning or doubling a winch line"), "block")
    left = [(one.tag, tr("Not needed for these vehicles.")) for one in packing.free]
    return Packed(tuple(packing.takes), tuple(packing.lacks), tuple(sorted([*stays, *packing.misfits.items(), *left])))


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


def _inserts(packing: _Packing, vehicles: tuple[Vehicle, ...]) -> None:
    """A pin and an insert for the vehicles that have a fit receiver; one more where two have nothing else."""

    def has(vehicle: Vehicle, role: str) -> bool:
        return any(one.fitted and one.fitted.vehicle == vehicle.tag for one in packing.fitted(role))

    with_receiver = [one for one in vehicles if has(one, "receiver")]
    only = [one for one in with_receiver if not has(one, "point")]
    for vehicle in vehicles:
        if not has(vehicle, "receiver") and not has(vehicle, "point"):
            packing.lacks.append(tr("A fit recovery point or receiver on {vehicle}.", vehicle=vehicle.tag))
    count = min(max(len(only), 1), 2) if with_receiver else 0
    tubes = packing.fitted("receiver")
    pins, inserts = packing.best("pin"), packing.best("insert")
    bad_pins = [one for one in pins if tubes and not any(pin_passes(one, tube) for tube in tubes)]
    packing.leave(bad_pins, tr("It goes through no pin hole of these vehicles' receivers."))
    bad_inserts = [one for one in inserts if tubes and not any(goes_with(one, tube, packing.book) for tube in tubes)]
    packing.leave(bad_inserts, tr("Its block fills no receiver of these vehicles."))
    packing.want(count, tr("Holding an insert in a receiver"), "pin")
    packing.want(count, tr("Fixing a shackle to a receiver"), "insert")


def _connectors(packing: _Packing) -> None:
    """Shackles that go through a point on the vehicles or through an insert of the kit; soft ones always do."""
    bored = [*packing.fitted("point"), *(one for one in packing.taken if packing.role(one) == "insert")]
    bad = [one for one in packing.best("shackle") if bored and not any(pin_passes(one, other) for other in bored)]
    packing.leave(bad, tr("Its pin goes through no point of these vehicles and no insert of the kit."))
    packing.want(int(packing.book.setting("pack_connectors")), tr("Joining lines to vehicles"), *_CONNECTORS)


def _has_two_points(parts: list[RigPiece], vehicle: str, book: Rulebook) -> bool:
    ends = [
        one.fitted.end
        for one in parts
        if one.fitted and one.fitted.vehicle == vehicle and book.roles[one.kind].key == "point"
    ]
    return any(end and ends.count(end) > 1 for end in ends)

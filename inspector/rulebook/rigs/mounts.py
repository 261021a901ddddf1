"""Where a line can be fixed to a vehicle: a point, an insert pinned in a receiver, a bridle on two points."""

import math
from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.rig import RigPiece
from inspector.gear.trip import Vehicle
from inspector.mechanics import bridle, rating
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.fits import goes_with, hole_of, pin_passes
from inspector.rulebook.rigs.layout import carries
from inspector.rulebook.rigs.limits import Limited
from inspector.rulebook.rigs.pin_lever import lever_left_ratio

_LIKE = 2  # the best of several like pieces, and one more where both vehicles want one


class Mount(Struct, frozen=True):
    """A way to fix a line. inner: runs from the vehicle outwards, each waiting for a connector; slot_shares: of the
    line's pull, what each of those connectors bears. middle: the bridle they all lead to, or empty.

    limit_n: the line's pull at which the first of its own pieces has used up what it may bear. used: tags of all.
    """

    inner: tuple[tuple[str, ...], ...]
    slot_shares: tuple[float, ...]
    limit_n: float
    used: tuple[str, ...]
    middle: str = ""


def mounts(vehicle: Vehicle, at_hand: tuple[Limited, ...], book: Rulebook) -> tuple[Mount, ...]:
    """The ways to fix a line to the vehicle with the pieces at hand that are not bettered by another of their sort.

    A point that stands more betters every other point of no wider hole; so does the stronger pair at one end. What
    both vehicles may want from the kit, a pin, an insert, a bridle, is kept twice over.
    """
    here = [one for one in at_hand if _sits_on(one.piece, vehicle.tag)]
    points = best(tuple(here), "point", len(here))
    found = [Mount(((one.tag,),), (1.0,), one.limit_n, (one.tag,)) for one in _widest(points)]
    found += _receivers(here, at_hand, book)
    found += _unbettered(list(_bridles(vehicle, points, at_hand, book)))
    return tuple(found)


def _widest(points: list[Limited]) -> Iterator[Limited]:
    """The strongest point, and each weaker one whose hole takes what no stronger one's does."""
    widest_m = 0.0
    for one in points:
        hole_m = hole_of(one.piece)
        wide_m = math.inf if hole_m is None else hole_m
        if wide_m > widest_m:
            widest_m = wide_m
            yield one


def _unbettered(bridled: list[Mount]) -> list[Mount]:
    """Bridles that fewer than two others better: by what they may bear and by what they put on each leg."""
    return [one for one in bridled if sum(_betters(other, one) for other in bridled) < _LIKE]


def _betters(other: Mount, one: Mount) -> bool:
    if other.middle == one.middle:
        return other.limit_n > one.limit_n and other.slot_shares <= one.slot_shares
    better = other.limit_n >= one.limit_n and other.slot_shares <= one.slot_shares
    same = other.limit_n == one.limit_n and other.slot_shares == one.slot_shares
    return better and (not same or other.used < one.used)


def _sits_on(piece: RigPiece, vehicle: str) -> bool:
    return piece.fitted is not None and piece.fitted.vehicle == vehicle


def best(at_hand: tuple[Limited, ...], role: str, count: int = _LIKE) -> list[Limited]:
    """The strongest pieces of a role, by what each may bear."""
    return sorted((one for one in at_hand if one.role == role), key=lambda one: (-one.limit_n, one.tag))[:count]


def _receivers(here: list[Limited], at_hand: tuple[Limited, ...], book: Rulebook) -> Iterator[Mount]:
    for receiver in best(tuple(here), "receiver", len(here)):
        bars = [one for one in here if one.role == "bar" and carries(one.piece, receiver.piece)]
        pins = tuple(one for one in at_hand if pin_passes(one.piece, receiver.piece))
        inserts = tuple(one for one in at_hand if goes_with(one.piece, receiver.piece, book))
        for insert in best(inserts, "insert"):
            for pin in best(tuple(_bent(one, receiver, insert, book) for one in pins), "pin"):
                chain = (*bars[:1], receiver, pin, insert)
                tags = tuple(one.tag for one in chain)
                yield Mount((tags,), (1.0,), min(one.limit_n for one in chain), tags)


def _bent(pin: Limited, receiver: Limited, insert: Limited, book: Rulebook) -> Limited:
    """A pin with what the wall and the block leave of it."""
    if pin.role != "pin":
        return pin
    return replace(pin, limit_n=pin.limit_n * lever_left_ratio(pin.piece, receiver.piece, insert.piece, book))


def _bridles(vehicle: Vehicle, points: list[Limited], at_hand: tuple[Limited, ...], book: Rulebook) -> Iterator[Mount]:
    for end in sorted({_end(one) for one in points} - {""}):
        strongest = [one for one in points if _end(one) == end][:_LIKE]
        if len(strongest) < _LIKE:
            continue
        first, second = strongest
        for strap in (one for one in at_hand if one.role == "bridle"):
            share = _leg_share(vehicle, end, strap, book)
            if share is None:
                continue
            legs_n = min(first.limit_n, second.limit_n, strap.limit_n) / share
            used = (first.tag, second.tag, strap.tag)
            yield Mount(((first.tag,), (second.tag,)), (share, share, 1.0), legs_n, used, strap.tag)


def _end(one: Limited) -> str:
    return one.piece.fitted.end.value if one.piece.fitted else ""


def _leg_share(vehicle: Vehicle, end: str, strap: Limited, book: Rulebook) -> float | None:
    """What each leg bears of the line's pull; None where the bridle does not reach."""
    spacing = {"front": vehicle.front_spacing, "rear": vehicle.rear_spacing}.get(end)
    length = strap.piece.judged.dossier.item.size("length")
    if spacing is None or length is None:
        return rating.bridle_leg_factor(book.setting("bridle_angle_unsaid"))
    if spacing.si >= length.si * (1 - 1e-9):
        return None
    return rating.bridle_leg_factor(bridle.bridle_angle_rad(spacing.si, length.si))

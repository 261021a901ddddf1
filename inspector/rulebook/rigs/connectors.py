"""Which shackle goes where in a planned rig: the choice with the greatest least margin, of those that go together."""

from collections.abc import Callable, Sequence

from msgspec import Struct

from inspector.gear.rig import RigPiece
from inspector.rulebook.rigs.fits import pin_passes
from inspector.rulebook.rigs.limits import Limited

_HAIR = 1 - 1e-12


class Slot(Struct, frozen=True):
    """A place for a connector: what it bears of the line's pull, and the bored or cut steel beside it, if any."""

    share: float
    bored: RigPiece | None = None

    def takes(self, one: Limited) -> bool:
        """Whether the connector goes through the hole there; a soft shackle goes through any."""
        return self.bored is None or one.role == "soft" or pin_passes(one.piece, self.bored)


def connectors(slots: Sequence[Slot], free: Sequence[Limited], limit_n: float) -> tuple[list[Limited], float] | None:
    """A connector for each slot and the line's pull at which the first part has used up what it may bear.

    The strongest where most is borne, by which no other choice has a greater margin; where a hole speaks against that,
    the best of those that fit. Then shackles at bored steel, as long as that costs no margin. free: the strongest
    first. None where no choice fits.
    """
    order = sorted(range(len(slots)), key=lambda at: -slots[at].share)
    chosen = dict(zip(order, free, strict=False))
    if len(chosen) < len(slots) or not all(slots[at].takes(one) for at, one in chosen.items()):
        chosen = _best_that_fit(slots, free)
    if len(chosen) < len(slots):
        return None
    least_n = min([limit_n, *(chosen[at].limit_n / slots[at].share for at in order)])
    taken = {one.tag for one in chosen.values()}
    spare = [one for one in free if one.role == "shackle" and one.tag not in taken]
    for at in order:
        if slots[at].bored is not None and chosen[at].role == "soft":
            _swap(chosen, at, slots, spare, least_n)
    return [chosen[at] for at in range(len(slots))], least_n


def _best_that_fit(slots: Sequence[Slot], free: Sequence[Limited]) -> dict[int, Limited]:
    """The choice whose least margin is the greatest: the margins that there may be are tried from the greatest down."""
    for least_n in sorted({one.limit_n / slot.share for slot in slots for one in free}, reverse=True):

        def may(at: int, one: Limited, least_n: float = least_n) -> bool:
            return slots[at].takes(one) and one.limit_n >= least_n * slots[at].share * _HAIR

        chosen = _matched(len(slots), free, may)
        if len(chosen) == len(slots):
            return chosen
    return {}


def _matched(count: int, free: Sequence[Limited], may: Callable[[int, Limited], bool]) -> dict[int, Limited]:
    """As many slots as can be filled at once, by augmenting ways."""
    holder: dict[str, int] = {}
    by_tag = {one.tag: one for one in free}

    def place(at: int, seen: set[str]) -> bool:
        for one in free:
            if one.tag in seen or not may(at, one):
                continue
            seen.add(one.tag)
            if one.tag not in holder or place(holder[one.tag], seen):
                holder[one.tag] = at
                return True
        return False

    for at in range(count):
        place(at, set())
    return {at: by_tag[tag] for tag, at in holder.items()}


def _swap(chosen: dict[int, Limited], at: int, slots: Sequence[Slot], spare: list[Limited], limit_n: float) -> None:
    """Put a shackle in a soft shackle's place: from another slot where fibre may lie, or from those left over."""
    need_n = limit_n * slots[at].share * _HAIR

    def serves(one: Limited) -> bool:
        return one.role == "shackle" and one.limit_n >= need_n and slots[at].takes(one)

    for other, one in chosen.items():
        may_lie = slots[other].bored is None and chosen[at].limit_n >= limit_n * slots[other].share * _HAIR
        if may_lie and serves(one):
            chosen[at], chosen[other] = one, chosen[at]
            return
    found = next((one for one in spare if serves(one)), None)
    if found is not None:
        spare.remove(found)
        chosen[at] = found

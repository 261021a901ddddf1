"""Strengths of round bars and blocks: hitch pins, the shank of a tow ball, shackles, receiver inserts."""

from msgspec import Struct
from msgspec.structs import replace

from inspector.language import tr
from inspector.mechanics import pin_service, plate, sections, shear
from inspector.mechanics.eye_ends import us_eye_shear_n
from inspector.rulebook.case import Case
from inspector.rulebook.observed import measured
from inspector.rulebook.steel_parts import (
    Found,
    SteelTaken,
    Way,
    beyond_calliper_m,
    class_steel,
    found,
    unknown_steel,
)

_CHARACTERISTIC = 1.0  # no partial factor inside
_BEST_SHANK_PA = 900e6  # yield of class 10.9: better than any ball is made of
_SHACKLE_BARS = (("bow_diameter", "body"), ("pin_diameter", "pin"))


def pin_strengths(case: Case) -> Found:
    """A hitch pin held by both walls of a receiver, pulled by a solid insert."""
    new = case.dossier.item.size("pin_diameter")
    if new is None:
        return Found(left_out=(tr("the pin: its diameter as new was not written down"),))
    why = tr("The pin has not been measured.")
    now_m = _thinnest_m(case, "pin_diameter", new.si)
    return found(_pin_ways(case, class_steel(case, "pin_class")), new.si, now_m, [], why)


def _thinnest_m(case: Case, measure: str, new_m: float) -> float | None:
    value = measured(case, measure, min).value
    return None if value is None or value.number is None else beyond_calliper_m(case, value.number, new_m)


def _pin_ways(case: Case, steel: SteelTaken) -> list[Way[float]]:
    insert, play, wall = (case.book.setting(f"hitch_{key}") for key in ("insert_side", "insert_play", "receiver_wall"))
    lever_m = shear.pin_lever_m(insert, play, wall)

    def cut_n(pin_m: float) -> float:
        return shear.pin_shear_n(pin_m, steel.ultimate_pa, 2, _CHARACTERISTIC) if pin_m > 0 else 0.0

    def bent_n(pin_m: float) -> float:
        if pin_m <= 0:
            return 0.0
        return shear.pin_bending_pull_n(lever_m, shear.pin_moment_resistance_n_m(pin_m, steel.yield_pa))

    def both_n(pin_m: float) -> float:
        if pin_m <= 0:
            return 0.0
        moment_n_m = shear.pin_moment_resistance_n_m(pin_m, steel.yield_pa)
        return shear.pin_combined_pull_n(lever_m, moment_n_m, cut_n(pin_m) / 2)

    def set_n(pin_m: float) -> float:
        if pin_m <= 0:
            return 0.0
        return shear.pin_bending_pull_n(lever_m, pin_service.pin_service_moment_n_m(pin_m, steel.yield_pa))

    source = "en_1993_1_8_pins"
    cut, bent = tr("the pin in double shear alone"), tr("the pin in bending alone")
    both = tr("the pin bends in a solid insert")
    return [
        Way("pin_combined", both, steel.because, source, both_n, set_n),
        Way("pin_bends", bent, steel.because, source, bent_n, set_n),
        Way("pin_shear", cut, steel.because, source, cut_n),
    ]


def ball_strengths(case: Case) -> Found:
    """The shank of a tow ball as a lever, in steel nobody knows, and beside it in the best there is."""
    shank, lever = case.dossier.item.size("shank_diameter"), case.dossier.item.size("lever")
    if shank is None or lever is None or min(shank.si, lever.si) <= 0:
        return Found(left_out=(tr("the shank: its diameter or the height of the ball was not measured"),))
    steel, lever_m = unknown_steel(case), lever.si
    best = SteelTaken(_BEST_SHANK_PA, _BEST_SHANK_PA, tr("even in steel of class 10.9"))
    ways = [_shank(steel, lever_m, "shank"), _shank(best, lever_m, "shank_best", beside=True)]
    return found(ways, shank.si, shank.si, [])


def _shank(steel: SteelTaken, lever_m: float, mode: str, *, beside: bool = False) -> Way[float]:
    return Way(
        mode,
        tr("the shank of the ball bends over"),
        steel.because,
        "elementary_statics",
        lambda shank_m: shear.shank_plastic_limit_n(shank_m, lever_m, steel.yield_pa),
        lambda shank_m: shear.shank_elastic_limit_n(shank_m, lever_m, steel.yield_pa),
        beside=beside,
    )


def shackle_strengths(case: Case) -> Found:
    """What wear has left of a shackle's body and pin, as shares: its steel is the maker's secret."""
    parts = [_worn(case, measure, what) for measure, what in _SHACKLE_BARS]
    return Found(
        tuple(one for part in parts for one in part.strengths),
        tuple(one for part in parts for one in part.left_out),
        next((part.why_unknown for part in parts if part.why_unknown), ""),
    )


def _worn(case: Case, measure: str, what: str) -> Found:
    new = case.dossier.item.size(measure)
    names = {
        "body": (tr("the section of the body"), tr("the body in bending")),
        "pin": (tr("the section of the pin"), tr("the pin in bending")),
    }
    if new is None or new.si <= 0:
        return Found(left_out=(tr("{part}: its diameter as new was not written down", part=names[what][0]),))
    because = tr("only the share left is told: section goes with the square of the diameter, bending with its cube")
    section, bending = names[what]
    ways = [
        Way(f"{what}_bending", bending, because, "elementary_statics", _bending, only_share=True),
        Way(f"{what}_section", section, because, "elementary_statics", _section, only_share=True),
    ]
    return found(ways, new.si, _thinnest_m(case, measure, new.si), [], tr("Its body and pin have not been measured."))


def _section(bar_m: float) -> float:
    return sections.round_elastic_modulus_m3(bar_m) / bar_m if bar_m > 0 else 0.0


def _bending(bar_m: float) -> float:
    return sections.round_elastic_modulus_m3(bar_m) if bar_m > 0 else 0.0


class Block(Struct, frozen=True):
    """A solid square block with the hole for its shackle, in metres; beyond_m: from the hole to the end."""

    side_m: float
    hole_m: float
    beyond_m: float | None


def insert_strengths(case: Case) -> Found:
    """A receiver insert: the steel beside and beyond its shackle hole, and the hitch pin in it."""
    hole, side, end = (case.dossier.item.size(key) for key in ("hole_diameter", "block_side", "end_distance"))
    if hole is None or side is None or not 0 < hole.si < side.si:
        return Found(left_out=(tr("the block: its side or its hole was not measured"),))
    left_out = [] if end else [tr("tearing out beyond the shackle hole: the distance to the end was not measured")]
    new = Block(side.si, hole.si, end.si if end else None)
    return found(_block_ways(case, new), new, _block_now(case, new), left_out, tr("Its hole has not been measured."))


def _block_now(case: Case, new: Block) -> Block | None:
    value = measured(case, "hole_diameter", max).value
    if value is None or value.number is None:
        return None
    grown_m = max(beyond_calliper_m(case, value.number, new.hole_m) - new.hole_m, 0.0)
    beyond_m = None if new.beyond_m is None else new.beyond_m - grown_m
    return Block(new.side_m, min(new.hole_m + grown_m, new.side_m), beyond_m)


def _block_ways(case: Case, new: Block) -> list[Way[Block]]:
    """The ways of a block; in newtons only where it is known to be steel."""
    material = case.dossier.item.facts.material.lower()
    if any(word in material for word in ("steel", tr("steel").lower())) and "alumin" not in material:
        return _steel_block(case, new)
    because = tr("only the share left is told, for its metal is not known")
    names = {
        "block_net": tr("the block beside its shackle hole"),
        "block_tears": tr("the block beyond its shackle hole"),
        "block_bearing": tr("the block at the hitch pin"),
    }
    return [
        replace(way, part=names[way.mode], because=because, set_n=None, only_share=True)
        for way in _steel_block(case, new)
    ]


def _steel_block(case: Case, new: Block) -> list[Way[Block]]:
    steel, pin_m = unknown_steel(case), case.book.setting("hitch_pin_diameter")
    yield_pa = min(steel.yield_pa, class_steel(case, "").yield_pa)  # the weaker of block and pin

    def net_m2(block: Block) -> float:
        return plate.plate_net_area_m2(block.side_m, block.side_m, block.hole_m)

    def breaks_n(block: Block) -> float:
        return plate.plate_net_tension_n(net_m2(block), steel.ultimate_pa, _CHARACTERISTIC)

    def yields_n(block: Block) -> float:
        return net_m2(block) * steel.yield_pa

    def tears_n(block: Block) -> float:
        if block.beyond_m is None or block.beyond_m <= 0:
            return 0.0
        return us_eye_shear_n(block.side_m, block.beyond_m, pin_m, steel.ultimate_pa, _CHARACTERISTIC)

    def crushes_n(block: Block) -> float:
        return shear.pin_bearing_n(block.side_m, pin_m, yield_pa, 1, _CHARACTERISTIC)

    def marks_n(block: Block) -> float:
        return pin_service.pin_service_bearing_n(block.side_m, pin_m, yield_pa, 1)

    beside = tr("the block pulls apart beside the shackle hole")
    beyond, crushed = tr("the shackle tears out of the end"), tr("the hitch pin crushes the block")
    return [
        Way("block_net", beside, steel.because, "en_1993_1_8_bolts", breaks_n, yields_n),
        *([Way("block_tears", beyond, steel.because, "aisc_360_d5", tears_n)] if new.beyond_m else []),
        Way("block_bearing", crushed, steel.because, "en_1993_1_8_pins", crushes_n, marks_n),
    ]

"""Strengths of receivers, ball mounts and tow bars: the pin in their walls, what is left beside it, and the weld."""

from collections.abc import Callable

from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.kind import kind_word
from inspector.language import tr
from inspector.mechanics import plate, sections, shear, weld_group, welds
from inspector.mechanics.eye_ends import us_eye_shear_n
from inspector.mechanics.pin_service import pin_service_bearing_n
from inspector.rulebook.case import Case
from inspector.rulebook.observed import measured
from inspector.rulebook.steel_bolts import bolts_of
from inspector.rulebook.steel_parts import (
    Found,
    SteelTaken,
    Way,
    beyond_calliper_m,
    class_steel,
    found,
    pin_diameter_m,
    unknown_steel,
)
from inspector.rulebook.strength_wall import StrengthWall, strength_wall

_COLD_FORMED_RADIUS = 2.0  # outer corner radius in walls, EN 10219-2
_CHARACTERISTIC = 1.0  # no partial factor inside


class Tube(Struct, frozen=True):
    """A square tube with its pin hole at one time, in metres. rusted_m: what the wall has lost since it was new."""

    side_m: float
    wall_m: float
    radius_m: float
    hole_m: float = 0.0
    grown_m: float = 0.0  # of the hole, along the pull
    rusted_m: float = 0.0

    @property
    def flat_m(self) -> float:
        """The flat of a face between the corners."""
        return self.side_m - 2 * self.radius_m

    @property
    def area_m2(self) -> float:
        """The whole section."""
        return sections.square_tube_area_m2(self.side_m, self.wall_m, self.radius_m)

    @property
    def net_area_m2(self) -> float:
        """The section beside the pin hole."""
        hole_m = min(self.hole_m, self.flat_m)
        return sections.square_tube_net_area_m2(self.side_m, self.wall_m, self.radius_m, hole_m)

    @property
    def two_walls_m2(self) -> float:
        """The two pierced walls beside the pin hole, each to the middle of its corners."""
        if self.wall_m <= 0:
            return 0.0
        width_m = self.area_m2 / (4 * self.wall_m)
        return sections.two_walls_net_area_m2(width_m, self.wall_m, min(self.hole_m, width_m))


def tube_strengths(case: Case) -> Found:
    """The strengths of a receiver or ball mount."""
    wall, new = strength_wall(case), _new(case)
    if wall is None or new is None:
        return Found(left_out=(tr("the tube: its sizes as new were not written down"),))
    left_out: list[str] = []
    ways = [*_at_pin(case, left_out), *_at_weld(case, left_out)]
    return found(ways, new, _now(case, new, wall), left_out, _why(wall))


def bar_strengths(case: Case) -> Found:
    """The strengths of a tow bar: the share of its tube that is left, and its bolts."""
    wall, new = strength_wall(case), _new(case)
    bolts = bolts_of(case)
    if wall is None or new is None:
        return replace(bolts, left_out=(*bolts.left_out, tr("the tube: its sizes as new were not written down")))
    now = None if wall.now_m is None else replace(new, wall_m=wall.now_m)
    because = tr("only the share left is told, for nobody knows its span")
    bends = Way("bar_bends", tr("the bar in bending"), because, "en_10219_2", _modulus, only_share=True)
    whole = Way("bar_section", tr("the section of the bar"), because, "en_10219_2", _area, only_share=True)
    tube = found([bends, whole], new, now, [], _why(wall))
    return Found(
        (*tube.strengths, *bolts.strengths), (*tube.left_out, *bolts.left_out), tube.why_unknown or bolts.why_unknown
    )


def _area(tube: Tube) -> float:
    return tube.area_m2


def _modulus(tube: Tube) -> float:
    return sections.square_tube_modulus_m3(tube.side_m, tube.wall_m, tube.radius_m)


def _why(wall: StrengthWall) -> str:
    if wall.now_m is None and wall.unread:
        points = ", ".join(map(kind_word, wall.unread))
        return tr(
            "Nobody knows how long it has rusted, and no competent person has read its wall at: {points}.",
            points=points,
        )
    if wall.now_m is None:
        return tr("Nobody knows how long it has rusted, and no competent person has read its wall.")
    return tr("Its pin hole has not been measured.")


def _new(case: Case) -> Tube | None:
    """The tube as new; a corner radius nobody measured is that of cold-formed tubes, the rounder kind."""
    item = case.dossier.item
    side, wall, hole, corner = (item.size(key) for key in ("outside", "wall", "pin_hole", "corner_radius"))
    if side is None or wall is None or not 0 < wall.si < side.si / 2:
        return None
    radius_m = min(corner.si if corner else _COLD_FORMED_RADIUS * wall.si, side.si * 0.49)
    return Tube(side.si, wall.si, radius_m, hole.si if hole else 0.0)


def _now(case: Case, new: Tube, wall: StrengthWall) -> Tube | None:
    """The tube as it is: wall thinned, hole grown; None where nobody knows."""
    hole = measured(case, "pin_hole", max)
    if wall.now_m is None or hole.value is None or hole.value.number is None:
        return None
    grown_m = beyond_calliper_m(case, hole.value.number, new.hole_m) - new.hole_m
    rusted_m = new.wall_m - wall.now_m
    return replace(new, wall_m=wall.now_m, hole_m=new.hole_m + grown_m, grown_m=grown_m, rusted_m=rusted_m)


def _at_pin(case: Case, left_out: list[str]) -> list[Way[Tube]]:
    if case.dossier.item.size("pin_hole") is None:
        left_out.append(tr("the walls at the pin: the pin hole was not measured when new"))
        return []
    steel, pin_m = unknown_steel(case), pin_diameter_m(case, "pin_hole")
    yield_pa = min(steel.yield_pa, class_steel(case, "").yield_pa)  # the weaker of wall and pin
    end = case.dossier.item.size("end_distance")
    if end is None:
        left_out.append(tr("tearing out behind the pin hole: the distance to the end was not measured"))
    return [
        Way(
            "pin_bearing",
            tr("the pin crushes the two walls"),
            steel.because,
            "en_1993_1_8_pins",
            lambda tube: shear.pin_bearing_n(tube.wall_m, pin_m, yield_pa, 2, _CHARACTERISTIC),
            lambda tube: pin_service_bearing_n(tube.wall_m, pin_m, yield_pa, 2),
        ),
        *_net_sections(steel),
        *([_tearing(steel, pin_m, end.si)] if end else []),
    ]


def _net_sections(steel: SteelTaken) -> list[Way[Tube]]:
    def breaks(area_m2: Callable[[Tube], float]) -> Callable[[Tube], float]:
        return lambda tube: plate.plate_net_tension_n(area_m2(tube), steel.ultimate_pa, _CHARACTERISTIC)

    def walls_m2(tube: Tube) -> float:
        return tube.two_walls_m2

    def tube_m2(tube: Tube) -> float:
        return tube.net_area_m2

    walls = tr("the two walls beside the pin hole pull apart")
    whole = tr("the whole tube pulls apart at the pin hole")
    return [
        Way("walls_net", walls, steel.because, "en_1993_1_8_bolts", breaks(walls_m2), _yields(steel, walls_m2)),
        Way("tube_net", whole, steel.because, "en_1993_1_8_bolts", breaks(tube_m2), _yields(steel, tube_m2)),
    ]


def _yields(steel: SteelTaken, area_m2: Callable[[Tube], float]) -> Callable[[Tube], float]:
    return lambda tube: area_m2(tube) * steel.yield_pa


def _tearing(steel: SteelTaken, pin_m: float, end_m: float) -> Way[Tube]:
    """The pin tears out towards the near end, two planes in each of two walls; a grown hole has used up some steel."""

    def holds_n(tube: Tube) -> float:
        beyond_m = end_m - tube.grown_m
        if beyond_m <= 0 or tube.wall_m <= 0:
            return 0.0
        return 2 * us_eye_shear_n(tube.wall_m, beyond_m, pin_m, steel.ultimate_pa, _CHARACTERISTIC)

    return Way("pin_tears", tr("the pin tears out of the end"), steel.because, "aisc_360_d5", holds_n)


def _at_weld(case: Case, left_out: list[str]) -> list[Way[Tube]]:
    """The weld all round: straight for a receiver, at the ball's height for a ball mount, and what warns."""
    item, is_mount = case.dossier.item, case.dossier.kind.key == "ball_mount"
    throat, lever = item.size("weld_throat"), item.size("lever")
    chain = item.size("chain_hole")
    if throat is None or (is_mount and lever is None):
        left_out.append(tr("the weld: its throat or the height of the pull was not measured"))
        return []
    if lever and is_mount:
        return [_weld(case, throat.si, lever.si, "weld_lever", tr("the weld tears, pulled at the height of the ball"))]
    straight = _weld(case, throat.si, 0.0, "weld_straight", tr("the weld all round the tube tears"))
    return [straight, *(_chain_hole(case, throat.si, chain.si) if chain else [])]


def _weld(case: Case, throat_m: float, lever_m: float, mode: str, part: str, *, beside: bool = False) -> Way[Tube]:
    steel = unknown_steel(case)
    strength_pa = welds.weld_shear_strength_pa(steel.ultimate_pa, welds.weld_correlation_factor(), _CHARACTERISTIC)

    def holds_n(tube: Tube) -> float:
        left_m = welds.corroded_throat_m(throat_m, tube.rusted_m, tube.wall_m)
        return weld_group.tube_weld_capacity_n(lever_m, tube.side_m, tube.radius_m, left_m, strength_pa)

    return Way(mode, part, steel.because, "weld_as_a_line", holds_n, beside=beside)


def _chain_hole(case: Case, throat_m: float, lever_m: float) -> list[Way[Tube]]:
    """A pull nobody may make: from the chain hole below the tube, on weld and on wall."""
    steel = unknown_steel(case)

    def wall_n(tube: Tube) -> float:
        if tube.wall_m <= 0:
            return 0.0
        return steel.yield_pa / weld_group.tube_wall_stress_pa(1.0, lever_m, tube.area_m2, _modulus(tube))

    weld = tr("a pull from the chain hole tears the weld: never pull there")
    wall = tr("a pull from the chain hole bends the tube beside the weld: never pull there")
    return [
        _weld(case, throat_m, lever_m, "chain_hole_weld", weld, beside=True),
        Way("chain_hole_wall", wall, steel.because, "elementary_statics", wall_n, beside=True),
    ]

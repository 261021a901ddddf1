"""Each joint of a rig: whether it holds by its kind, what passes through, and the sum that shows why."""

from inspector.gear.rig import LooseEnd
from inspector.gear.rig_result import JointUse, RigOutcome
from inspector.language import tr, within
from inspector.mechanics import coupling, sections, shear, weld_group
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.layout import Joined, Layout, Part
from inspector.rulebook.rigs.links import pin_left_ratio
from inspector.rulebook.rigs.loads import Loaded
from inspector.units import Dimension, System, show

_MEGA = 1e6
_COLD_FORMED_RADIUS = 2.0  # outer corner radius in walls, EN 10219-2

Figures = tuple[tuple[str, float], ...]
Sum = tuple[tuple[str, ...], Figures]


def joint_uses(layout: Layout, loaded: Loaded, system: System) -> tuple[JointUse, ...]:
    """Every joint, in the order of the runs."""
    return tuple(_use(layout, loaded, joined, system) for joined in layout.joined)


def _use(layout: Layout, loaded: Loaded, joined: Joined, system: System) -> JointUse:
    one, other, joint = layout.parts[joined.one], layout.parts[joined.other], joined.joint
    force_n = loaded.load.pull_n * loaded.shares.joint[frozenset((joined.one, joined.other))]
    if joint is None:
        says = tr(
            "Nobody knows a sound way to join a {one} to a {other}.", one=within(one.name), other=within(other.name)
        )
        house = layout.book.source_text("house_law")
        return JointUse(joined.one, joined.other, "", tr("No known joint"), force_n, RigOutcome.UNSOUND, says, house)
    sums, figures = _summed(joint.picture, layout, (one, other), force_n, system)
    return JointUse(
        one=joined.one,
        other=joined.other,
        how=joint.key,
        name=joint.name,
        force_n=force_n,
        outcome=joint.outcome,
        says=joint.says,
        source=layout.book.source_text(joint.source),
        picture=joint.picture,
        planes=joint.planes,
        sums=sums,
        figures=figures,
    )


def _summed(picture: str, layout: Layout, pair: tuple[Part, Part], force_n: float, system: System) -> Sum:
    """The numbers of this rig for the section that shows the joint."""
    book = layout.book
    if picture == "double_shear":
        return _double_shear(layout, pair, force_n, system)
    if picture == "single_shear":
        return _ball(book, _of(pair, "ball"), force_n, system)
    if picture == "weld_tension":
        return _weld(book, _of(pair, "ball_mount", "receiver"), force_n, system)
    if picture == "bare_tube":
        return _bare_pin(book, pair, force_n, system)
    if picture == "tie_down":
        end = _of(pair, LooseEnd.TIE_DOWN.value, LooseEnd.CHAIN_PLATE.value)
        return _tie_down(layout, end, force_n, system)
    return (), ()


def _of(pair: tuple[Part, Part], *roles: str) -> Part:
    return next(part for part in pair if part.role in roles)


def _size(part: Part, key: str) -> float | None:
    size = part.piece.judged.dossier.item.size(key) if part.piece else None
    return size.si if size and size.si > 0 else None


def _double_shear(layout: Layout, pair: tuple[Part, Part], force_n: float, system: System) -> Sum:
    pinned = _of(pair, "shackle", "pin")
    pin_m = _size(pinned, "pin_diameter")
    half = show(force_n / 2, Dimension.FORCE, system)
    if pin_m is None:
        said = tr("Each of the two sections bears {half}; the pin was not measured.", half=half)
        return (said,), (("per_plane_n", force_n / 2),)
    stress_pa = shear.shear_plane_stress_pa(force_n, pin_m, 2)
    said = tr(
        "Each of the two sections of the {pin} pin bears {half}: {stress} MPa.",
        pin=show(pin_m, Dimension.LENGTH, system),
        half=half,
        stress=f"{stress_pa / _MEGA:.0f}",
    )
    capacity = pinned.piece.judged.verdict.capacity.now_n if pinned.piece else None
    stands: Figures = (("strength_n", capacity * pin_left_ratio(layout, pinned)),) if capacity is not None else ()
    return (said,), (("pin_m", pin_m), ("per_plane_n", force_n / 2), ("stress_pa", stress_pa), *stands)


def _ball(book: Rulebook, ball: Part, force_n: float, system: System) -> Sum:
    shank, lever = _size(ball, "shank_diameter"), _size(ball, "lever")
    shank_m, lever_m = shank or book.setting("ball_shank_unsaid"), lever or book.setting("ball_lever_unsaid")
    yield_pa = book.setting("tube_yield_mpa") * _MEGA
    stress_pa = shear.shank_stress_pa(force_n, shank_m, lever_m)
    set_n = shear.shank_elastic_limit_n(shank_m, lever_m, yield_pa)
    breaks_n = shear.shank_plastic_limit_n(shank_m, lever_m, yield_pa)
    sums = [
        tr(
            "{force} on a lever of {lever} bends the {shank} shank with {stress} MPa.",
            force=show(force_n, Dimension.FORCE, system),
            lever=show(lever_m, Dimension.LENGTH, system),
            shank=show(shank_m, Dimension.LENGTH, system),
            stress=f"{stress_pa / _MEGA:,.0f}",
        ),
        tr(
            "In steel that nobody knows it bends for good at {set} and folds at {breaks}.",
            set=show(set_n, Dimension.FORCE, system),
            breaks=show(breaks_n, Dimension.FORCE, system),
        ),
        *_not_measured(shank, lever),
    ]
    figures: Figures = (
        *(("shank_m", shank_m), ("lever_m", lever_m), ("moment_n_m", force_n * lever_m)),
        *(("stress_pa", stress_pa), ("first_set_n", set_n), ("strength_n", breaks_n)),
    )
    return tuple(sums), figures


def _not_measured(*given: float | None) -> list[str]:
    return [tr("Not all of it was measured; common sizes stand in.")] if None in given else []


def _weld(book: Rulebook, tube: Part, force_n: float, system: System) -> Sum:
    side, wall = _size(tube, "outside"), _size(tube, "wall")
    lever = _size(tube, "lever" if tube.role == "ball_mount" else "chain_hole")
    side_m, wall_m = side or book.setting("mount_side_unsaid"), wall or book.setting("mount_wall_unsaid")
    lever_m = lever or book.setting("mount_lever_unsaid")
    radius_m = min(_COLD_FORMED_RADIUS * wall_m, side_m * 0.49)
    times = weld_group.eccentric_over_straight_ratio(lever_m, side_m, radius_m)
    times *= weld_group.close_plate_factor(0.0, side_m)
    area_m2 = sections.square_tube_area_m2(side_m, wall_m, radius_m)
    modulus_m3 = sections.square_tube_modulus_m3(side_m, wall_m, radius_m)
    stress_pa = weld_group.tube_wall_stress_pa(force_n, lever_m, area_m2, modulus_m3)
    set_n = force_n * book.setting("tube_yield_mpa") * _MEGA / stress_pa if force_n > 0 else 0.0
    sums = [
        tr(
            "{force} at {lever} off the middle pulls the weld {times} times as hard on one side as a straight pull.",
            force=show(force_n, Dimension.FORCE, system),
            lever=show(lever_m, Dimension.LENGTH, system),
            times=f"{times:.1f}",
        ),
        tr(
            "The sound {wall} wall beside it bears {stress} MPa and gives way for good from {set}; rust takes of that.",
            wall=show(wall_m, Dimension.LENGTH, system),
            stress=f"{stress_pa / _MEGA:,.0f}",
            set=show(set_n, Dimension.FORCE, system),
        ),
        *_not_measured(side, wall, lever),
    ]
    figures: Figures = (
        *(("outside_m", side_m), ("wall_m", wall_m), ("lever_m", lever_m), ("moment_n_m", force_n * lever_m)),
        *(("times", times), ("stress_pa", stress_pa), ("first_set_n", set_n)),
    )
    return tuple(sums), figures


def _bare_pin(book: Rulebook, pair: tuple[Part, Part], force_n: float, system: System) -> Sum:
    """A pin across a bare tube, loaded in its middle, beside the same pin in a solid insert."""
    tube = next((part for part in pair if part.role == "receiver"), None)
    pin = next((part for part in pair if part.role == "pin"), None)
    pin_m = (_size(pin, "pin_diameter") if pin else None) or book.setting("hitch_pin_diameter")
    inside_m = book.setting("hitch_insert_side") + 2 * book.setting("hitch_insert_play")
    side, wall = (_size(tube, "outside"), _size(tube, "wall")) if tube else (None, None)
    if side is not None and wall is not None and side > 2 * wall:
        inside_m = side - 2 * wall
    wall_m = wall or book.setting("hitch_receiver_wall")
    yield_pa = book.setting("tube_yield_mpa") * _MEGA
    moment_n_m = force_n * (inside_m + wall_m) / 4
    held_n_m = shear.pin_moment_resistance_n_m(pin_m, yield_pa)
    holds_n = 4 * held_n_m / (inside_m + wall_m)
    said = tr(
        "In the middle of {inside}, the {pin} pin must bear {moment} N m and can bear {held}: it bends from {holds}.",
        inside=show(inside_m, Dimension.LENGTH, system),
        pin=show(pin_m, Dimension.LENGTH, system),
        moment=f"{moment_n_m:,.0f}",
        held=f"{held_n_m:,.0f}",
        holds=show(holds_n, Dimension.FORCE, system),
    )
    figures: Figures = (
        *(("pin_m", pin_m), ("inside_m", inside_m), ("wall_m", wall_m), ("moment_n_m", moment_n_m)),
        ("first_set_n", holds_n),
    )
    return (said,), figures


def _tie_down(layout: Layout, end: Part, force_n: float, system: System) -> Sum:
    vehicle = layout.facts.vehicles[end.body]
    eye_n = coupling.towing_eye_n(vehicle.gvm.si)
    said = tr(
        "{force} is {times} times what the law asks of the vehicle's towing eye ({eye}); nobody rates this for a pull.",
        force=show(force_n, Dimension.FORCE, system),
        times=f"{force_n / eye_n:.1f}",
        eye=show(eye_n, Dimension.FORCE, system),
    )
    return (said,), (("towing_eye_n", eye_n),)

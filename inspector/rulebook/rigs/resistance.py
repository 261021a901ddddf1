"""What holds the stuck vehicle: ground and slope, by a named scale or the largest of all that are printed."""

import math

from inspector.gear.rig import Conditions, Footing, Rig
from inspector.gear.trip import Vehicle
from inspector.language import tr
from inspector.mechanics import grade, ground
from inspector.mechanics.ground import ResistanceScale
from inspector.refused import Refused
from inspector.rulebook.rigs.saying import Account
from inspector.units import STANDARD_GRAVITY_M_PER_S2, Dimension

_SOURCES = {
    ResistanceScale.MILITARY: "mire_by_depth",
    ResistanceScale.CIVIL: "winching_tips_scale",
    ResistanceScale.CIVIL_FRACTION: "winching_theory_scale",
    ResistanceScale.TOW_TRADE: "tow_trade_scale",
    ResistanceScale.PRESS: "press_scale",
    ResistanceScale.SELLER: "common_practice",
}
_FIRM = {Footing.HARD_ROAD, Footing.WHEELS_LOCKED}
_LOOSE = {Footing.GRASS, Footing.GRAVEL, Footing.HARD_WET_SAND}


def mass_of(vehicle: Vehicle, account: Account) -> float:
    """The mass in kg on the day; the greatest on its plate where nobody weighed it."""
    what = tr("Mass of {vehicle}", vehicle=vehicle.tag)
    if vehicle.mass is not None:
        return account.recorded(what, vehicle.mass)
    account.assume(what, vehicle.gvm.as_typed, tr("nobody weighed it: the greatest mass on its plate"), "house_law")
    return vehicle.gvm.si


def drive_n(vehicle: Vehicle, mass_kg: float, conditions: Conditions, account: Account) -> float:
    """What the driven wheels of the pulling vehicle add, in newtons, kept on through the whole pull."""
    what = tr("Pull of the wheels of {vehicle}", vehicle=vehicle.tag)
    if conditions.drive is not None:
        if conditions.drive.si < 0:
            raise Refused(tr("drive"), tr("It cannot be below 0."), tr("Write a share of the weight, such as 60 %."))
        share = account.said(what, conditions.drive)
    else:
        share = account.setting(what, _drive_key(conditions.pulling_on))
    return share * mass_kg * STANDARD_GRAVITY_M_PER_S2


def _drive_key(footing: Footing | None) -> str:
    if footing is None or footing in _FIRM:
        return "drive_firm"
    return "drive_loose" if footing in _LOOSE else "drive_soft"


def needed_n(rig: Rig, vehicle: Vehicle, mass_kg: float, account: Account) -> float | None:
    """What ground and slope ask for, in newtons; None where nobody said what the vehicle stands in."""
    conditions = rig.conditions
    if conditions.bogged_in is None:
        return None
    scale = scale_of(conditions.scale)
    ratio = _ratio(conditions.bogged_in, scale)
    by = _named_by(conditions.bogged_in, scale)
    account.assume(
        tr("Resistance of {ground}", ground=footing_word(conditions.bogged_in)),
        account.show(ratio, Dimension.RATIO),
        tr("share of the weight; the largest that is printed") if scale is ResistanceScale.LARGEST else tr("as named"),
        _SOURCES[by],
    )
    level_n = ground.load_resistance_n(mass_kg, ratio)
    slope_n = _slope_n(conditions, mass_kg, account)
    total_n = ground.total_resistance_n(level_n, slope_n)
    account.step(
        tr(
            "To move {vehicle}: {ratio} of its weight in {ground}, {level}; uphill {slope}; together {total}.",
            vehicle=vehicle.tag,
            ratio=account.show(ratio, Dimension.RATIO),
            ground=footing_word(conditions.bogged_in),
            level=account.force(level_n),
            slope=account.force(slope_n),
            total=account.force(total_n),
        )
    )
    return total_n


def scale_of(name: str) -> ResistanceScale:
    """The scale with this name; refused with the list of names."""
    try:
        return ResistanceScale(name)
    except ValueError:
        listed = ", ".join(one.value for one in ResistanceScale)
        why = tr("“{name}” is no scale for the ground.", name=name)
        raise Refused(tr("scale"), why, tr("Use one of: {scales}.", scales=listed)) from None


def _ratio(footing: Footing, scale: ResistanceScale) -> float:
    where = ground.Ground(footing.value)
    if scale is not ResistanceScale.LARGEST and where not in ground.SCALES[scale]:
        named = [one.value for one in ResistanceScale if one in ground.SCALES and where in ground.SCALES[one]]
        why = tr("The scale {scale} says nothing of {ground}.", scale=scale.value, ground=footing_word(footing))
        raise Refused(tr("scale"), why, tr("Scales that do: {scales}, or largest.", scales=", ".join(named)))
    return ground.ground_resistance_ratio(where, scale)


def _named_by(footing: Footing, scale: ResistanceScale) -> ResistanceScale:
    if scale is not ResistanceScale.LARGEST:
        return scale
    where, ratio = ground.Ground(footing.value), _ratio(footing, scale)
    return next(one for one, figures in ground.SCALES.items() if figures.get(where) == ratio)


def _slope_n(conditions: Conditions, mass_kg: float, account: Account) -> float:
    if conditions.slope is None:
        account.assume(tr("Slope"), tr("level"), tr("nobody said that it stands on a slope"), "house_law")
        return 0.0
    if not 0 <= conditions.slope.si < math.pi / 2:
        why = tr("A slope lies between 0 and 90 degrees, not {slope}.", slope=conditions.slope.as_typed)
        raise Refused(tr("slope"), why, tr("Write how steeply it goes up, such as 12 °."))
    angle_rad = account.said(tr("Slope"), conditions.slope)
    return grade.grade_resistance_n(mass_kg, grade.grade_resistance_ratio(angle_rad))


def by_scale(conditions: Conditions, mass_kg: float) -> tuple[tuple[str, float], ...]:
    """What each printed scale that names this ground asks for, the slope with it: its name and newtons."""
    if conditions.bogged_in is None:
        return ()
    where = ground.Ground(conditions.bogged_in.value)
    slope_ratio = grade.grade_resistance_ratio(conditions.slope.si) if conditions.slope else 0.0
    slope_n = grade.grade_resistance_n(mass_kg, slope_ratio)
    return tuple(
        (scale_word(scale), ground.load_resistance_n(mass_kg, figures[where]) + slope_n)
        for scale, figures in ground.SCALES.items()
        if where in figures
    )


def scale_word(scale: ResistanceScale) -> str:
    """Whose scale it is."""
    words = {
        ResistanceScale.LARGEST: tr("the largest of all"),
        ResistanceScale.MILITARY: tr("army manuals, by depth"),
        ResistanceScale.CIVIL: tr("winching notes"),
        ResistanceScale.CIVIL_FRACTION: tr("winching notes, in fractions"),
        ResistanceScale.TOW_TRADE: tr("tow trade"),
        ResistanceScale.PRESS: tr("press"),
        ResistanceScale.SELLER: tr("a strap seller"),
    }
    return words[scale]


def scale_choices() -> tuple[tuple[str, str], ...]:
    """Every scale: its word and its name."""
    return tuple((scale_word(one), one.value) for one in ResistanceScale)


def footing_word(footing: Footing) -> str:
    """What a vehicle stands in, in words."""
    words = {
        Footing.HARD_ROAD: tr("hard road"),
        Footing.GRASS: tr("grass or firm earth"),
        Footing.HARD_WET_SAND: tr("hard wet sand"),
        Footing.GRAVEL: tr("gravel"),
        Footing.SOFT_WET_SAND: tr("soft wet sand"),
        Footing.SOFT_DRY_SAND: tr("soft dry sand"),
        Footing.SHALLOW_MUD: tr("shallow mud"),
        Footing.BOG: tr("bog or clinging clay"),
        Footing.WHEEL_DEEP_MUD: tr("mud to the wheel hubs"),
        Footing.SILL_DEEP_MUD: tr("mud to the sills"),
        Footing.CAB_DEEP_MUD: tr("mud to the cab"),
        Footing.WHEELS_LOCKED: tr("locked wheels, dragged"),
    }
    return words[footing]

"""Two topics of the bench: the weld of a ball mount pulled open, and the wall of a tube that salt thins from inside."""

from inspector.gear.bench import BenchTopic
from inspector.language import tr
from inspector.rulebook.bench.parts import Maker, Told, Topic, Working
from inspector.units import Dimension

_CHARACTERISTIC = 1.0  # no partial factor inside
_COLD_FORMED = 2.0  # outer corner radius in walls, EN 10219-2
_SIDES, _LENGTHS = ("30 mm", "100 mm"), ("1 mm", "0.05 in")
_WALLS = ("0.1 mm", "0.005 in")


def weld_topic(maker: Maker) -> Topic:
    """A shackle in the empty ball hole of a ball mount."""
    dials = (
        maker.of_setting("side", tr("Outer side of the shank"), "mount_side_unsaid", _SIDES, _LENGTHS),
        maker.of_practice("throat", tr("Throat of the weld as new"), "3 mm", ("2 mm", "10 mm"), _WALLS),
        maker.of_practice("rust", tr("Rusted off since"), "0 mm", ("0 mm", "5 mm"), _WALLS),
        maker.of_setting("off", tr("Ball hole off the middle"), "mount_lever_unsaid", ("0 mm", "150 mm"), _LENGTHS),
    )
    question = tr("Why may no shackle go into the empty ball hole of a ball mount?")
    shown = BenchTopic("weld", tr("A weld pulled open"), question, dials)
    return Topic(shown, _weld, lambda _working: None)


def _weld(working: Working) -> Told:
    side_m, throat_m, rust_m, off_m = (working.at(key) for key in ("side", "throat", "rust", "off"))
    wall_m = working.setting("mount_wall_unsaid", tr("Wall of the shank as new"))
    ultimate_pa = working.stress("tube_ultimate_mpa", tr("Ultimate strength of the steel"))
    radius_m = _COLD_FORMED * wall_m
    left_m = working.sum(
        tr("What rust leaves of the throat"), "corroded_throat_m", {"a": "throat_m", "D": "loss_m", "t": "wall_m"},
        throat_m=throat_m, loss_m=rust_m, wall_m=max(wall_m - rust_m, 0.0),
    )  # fmt: skip
    strength_pa = working.sum(
        tr("Strength of the throat"), "weld_shear_strength_pa",
        {"fu": "ultimate_pa", "bw": "correlation_factor", "gM2": "gamma_m2_factor"},
        ultimate_pa=ultimate_pa, correlation_factor=_correlation(working), gamma_m2_factor=_CHARACTERISTIC,
    )  # fmt: skip
    straight_n, beside_n = (
        working.sum(
            says, "tube_weld_capacity_n", {"a": "throat_m", "e": "eccentricity_m"}, eccentricity_m=lever_m,
            side_m=side_m, corner_radius_m=radius_m, throat_m=left_m, shear_strength_pa=strength_pa,
        )
        for says, lever_m in ((tr("Pulled along the middle"), 0.0), (tr("Pulled at the ball hole"), off_m))
    )  # fmt: skip
    times = working.sum(
        tr("How many times harder the torn side is loaded"), "eccentric_over_straight_ratio", {"e": "eccentricity_m"},
        eccentricity_m=off_m, side_m=side_m, corner_radius_m=radius_m,
    )  # fmt: skip
    amounts = {"side_m": side_m, "wall_m": wall_m, "throat_m": throat_m, "left_m": left_m, "off_m": off_m,
               "straight_n": straight_n, "beside_n": beside_n, "times": times}  # fmt: skip
    return Told(_weld_means(working, straight_n, beside_n, times), _weld_leaves_out(), amounts)


def _correlation(working: Working) -> float:
    found: float = working.sum(tr("Factor of the weld, for steel that nobody knows"), "weld_correlation_factor", {})
    return found


def _weld_means(working: Working, straight_n: float, beside_n: float, times: float) -> str:
    if beside_n <= 0:
        return tr("Rust has left nothing of the weld that a sum may count on: it bears nothing.")
    return tr(
        "A shackle in the empty ball hole pulls {off} off the middle of the shank. The weld bears {beside} there, and "
        "{straight} along the middle: one side is loaded {times} times as hard and pulled open at its root, which no "
        "paint and no look from outside shows.",
        off=working.text("off"),
        beside=working.show(beside_n, Dimension.FORCE),
        straight=working.show(straight_n, Dimension.FORCE),
        times=working.show(times, Dimension.FACTOR),
    )


def _weld_leaves_out() -> tuple[str, ...]:
    return (
        tr("how well the weld was made: cracks and cold spots at its root take away most of it"),
        tr("that the pull enters at the weld itself, for which a model of our own takes off another sixth"),
        tr("the plate, which bends, and the wall of the shank beside the weld"),
        tr("the many pulls of trailers before, by which a root cracks"),
    )


def wall_topic(maker: Maker) -> Topic:
    """A wall that thins from inside."""
    dials = (
        maker.of_setting("outside", tr("Outer side"), "mount_side_unsaid", _SIDES, _LENGTHS),
        maker.of_setting("new", tr("Wall as new"), "mount_wall_unsaid", ("1.5 mm", "12 mm"), _WALLS),
        maker.of_practice("now", tr("Wall now"), "3.6 mm", ("0 mm", "12 mm"), _WALLS),
        maker.of_practice("rate", tr("Lost in a year"), _rate_usual(maker), ("0 mm/year", "1.3 mm/year"),
                          ("0.01 mm/year", "0.001 in/year"), Dimension.RATE, "salt_rates"),
        maker.of_practice("years", tr("Years from now"), "2 years", ("0 years", "30 years"),
                          ("0.5 years", "0.5 years"), Dimension.YEARS),
    )  # fmt: skip
    question = tr("How long does a tube last that salt thins from inside, and what does it still bear?")
    shown = BenchTopic("wall", tr("A wall that thins from inside"), question, dials)
    return Topic(shown, _wall, _check_wall)


def _rate_usual(maker: Maker) -> str:
    return f"{maker.book.settings['wall_rate_field_high'].as_typed}/year"


def _check_wall(working: Working) -> None:
    if working.at("now") > working.at("new") * (1 + 1e-9):
        why = tr(
            "A wall does not grow: {now} is more than {new} as new.", now=working.text("now"), new=working.text("new")
        )
        raise working.refuse("now", why, tr("Give at most the wall as new, or more for that."))


def _wall(working: Working) -> Told:
    outside_m, new_m, now_m, rate, years = (working.at(key) for key in ("outside", "new", "now", "rate", "years"))
    must_m = _must(working, new_m)
    then_m = working.sum(
        tr("Wall by then"), "estimated_wall_m", {"t_0": "wall_m", "rate": "rate_m_per_year", "years": "years"},
        wall_m=now_m, rate_m_per_year=rate, years=years,
    )  # fmt: skip
    radius_m = min(_COLD_FORMED * new_m, outside_m / 2)
    new_m3, then_m3 = (
        working.sum(
            says, "square_tube_modulus_m3", {"B": "side_m", "t": "wall_m", "ro": "outer_radius_m"},
            side_m=outside_m, wall_m=wall_m, outer_radius_m=radius_m,
        )
        for says, wall_m in ((tr("Modulus in bending as new"), new_m), (tr("Modulus in bending by then"), then_m))
    )  # fmt: skip
    bears_n = _bears(working, then_m)
    life_years = working.sum(
        tr("Years until the limit"), "remaining_life_years",
        {"t_actual": "wall_m", "t_required": "required_m", "rate": "rate_m_per_year"},
        wall_m=now_m, required_m=must_m, rate_m_per_year=rate,
    )  # fmt: skip
    amounts = {"outside_m": outside_m, "new_m": new_m, "now_m": now_m, "then_m": then_m, "must_m": must_m,
               "rate_m_per_year": rate, "years": years, "left_ratio": then_m3 / new_m3, "bears_n": bears_n}  # fmt: skip
    return Told(_wall_means(working, amounts, life_years), _wall_leaves_out(), amounts)


def _must(working: Working, new_m: float) -> float:
    """The wall that must be left, in metres: the club's share of the new one, or more where a piece needs more."""
    share = working.setting("required_wall_fraction", tr("Share of the wall as new that must be left"))
    known = working.given.get("must")
    if known and known.figure.si > share * new_m:
        working.tell_given(tr("Wall that must be left"), known)
        return known.figure.si
    return share * new_m


def _bears(working: Working, wall_m: float) -> float:
    pin_m = working.setting("hitch_pin_diameter", tr("Hitch pin"))
    yield_pa = working.stress("tube_yield_mpa", tr("Yield strength of the steel"))
    found: float = working.sum(
        tr("What both walls bear at the pin by then"), "pin_bearing_n",
        {"n": "wall_count", "t": "wall_m", "d": "diameter_m", "fy": "yield_pa"},
        wall_m=wall_m, diameter_m=pin_m, yield_pa=yield_pa, wall_count=2,
    )  # fmt: skip
    return found


def _wall_means(working: Working, amounts: dict[str, float], life_years: float) -> str:
    said = tr(
        "After {years} the wall is {then} of {new}: the tube keeps {left} of its strength in bending, and its walls "
        "bear {bears} at the pin. Outside it looks as it did.",
        years=working.text("years"),
        then=working.show(amounts["then_m"], Dimension.LENGTH),
        new=working.text("new"),
        left=working.show(amounts["left_ratio"], Dimension.RATIO),
        bears=working.show(amounts["bears_n"], Dimension.FORCE),
    )
    must = working.show(amounts["must_m"], Dimension.LENGTH)
    if life_years <= 0:
        return f"{said} " + tr("It is at its limit of {must} already, where a tube is retired.", must=must)
    if amounts["rate_m_per_year"] <= 0:
        return f"{said} " + tr("Nothing is lost in this sum, so it never comes to its limit of {must}.", must=must)
    left = working.show(life_years, Dimension.YEARS)
    return f"{said} " + tr("It comes to its limit of {must} in {left}.", must=must, left=left)


def _wall_leaves_out() -> tuple[str, ...]:
    return (
        tr("what a gauge reads too thick, and pits between the places that were read"),
        tr("that rust in salt does not run evenly: a year may take more than the one before"),
        tr("holes, welds and dents; and a thinner wall where water stands"),
    )

"""Two topics of the bench: a pin held on one side or on both, and a tow ball's shank against such a pin."""

from inspector.gear.bench import BenchTopic
from inspector.language import tr
from inspector.rulebook.bench.parts import Maker, Told, Topic, Working, steel_of
from inspector.units import Dimension

_CHARACTERISTIC = 1.0  # no partial factor inside
_PIN_ENDS, _PIN_STEPS = ("6 mm", "40 mm"), ("0.5 mm", "0.02 in")
_LENGTHS = ("1 mm", "0.05 in")


def pin_topic(maker: Maker) -> Topic:
    """A pin in single against double shear."""
    dials = (
        maker.of_setting("pin", tr("Pin diameter"), "hitch_pin_diameter", _PIN_ENDS, _PIN_STEPS),
        maker.steel_class(),
        maker.of_setting("between", tr("Width of what pulls"), "hitch_insert_side", ("5 mm", "100 mm"), _LENGTHS),
        maker.of_setting(
            "play", tr("Play on each side"), "hitch_insert_play", ("0 mm", "10 mm"), ("0.5 mm", "0.02 in")
        ),
    )
    question = tr("Why must a pin be held on both sides of the pull?")
    shown = BenchTopic("pin", tr("A pin held on one side or on both"), question, dials)
    return Topic(shown, _pin, lambda _working: None)


def _pin(working: Working) -> Told:
    wall_m = working.setting("hitch_receiver_wall", tr("Wall that holds the pin"))
    pin_m, between_m, play_m = (working.at(key) for key in ("pin", "between", "play"))
    _, ultimate_pa = steel = steel_of(working)
    shear_n = _one_plane(working, pin_m, ultimate_pa)
    working.sum(
        tr("Shear alone, two sections"), "pin_shear_n", {"n": "plane_count"},
        diameter_m=pin_m, ultimate_pa=ultimate_pa, plane_count=2, gamma_m2_factor=_CHARACTERISTIC,
    )  # fmt: skip
    moment_n_m = _moment(working, pin_m, steel[0])
    double_n = _double(working, (between_m, play_m, wall_m), moment_n_m, shear_n)
    lever_m = working.sum(
        tr("Lever of a pin held on one side"), "single_shear_lever_m",
        {"a": "pulled_plate_m", "b": "holding_plate_m", "c": "gap_m"},
        pulled_plate_m=between_m, gap_m=play_m, holding_plate_m=wall_m,
    )  # fmt: skip
    single_n = working.sum(
        tr("Held on one side: shear and bending together"), "single_shear_pull_n",
        {"l": "lever_m", "MRd": "moment_resistance_n_m", "Fv,Rd": "shear_resistance_n"},
        lever_m=lever_m, moment_resistance_n_m=moment_n_m, shear_resistance_n=shear_n,
    )  # fmt: skip
    amounts = {"pin_m": pin_m, "between_m": between_m, "play_m": play_m, "wall_m": wall_m, "double_n": double_n,
               "single_n": single_n, "lever_m": lever_m}  # fmt: skip
    return Told(_pin_means(working, double_n, single_n), _pin_leaves_out(), amounts)


def _pin_means(working: Working, double_n: float, single_n: float) -> str:
    return tr(
        "The same pin bears {double} in double shear and {single} in single: held on both sides it bears {times} times "
        "as much. Shear alone would make it twice; the rest is bending, which a pin held on one side cannot escape.",
        double=working.show(double_n, Dimension.FORCE),
        single=working.show(single_n, Dimension.FORCE),
        times=working.show(double_n / single_n, Dimension.FACTOR),
    )


def _pin_leaves_out() -> tuple[str, ...]:
    return (
        tr("the walls that the pin presses on, which may give way before it"),
        tr("rust, wear and notches on the pin, and a thread in the section"),
        tr("jerks, and a margin: nothing is taken off these figures"),
    )


def _one_plane(working: Working, pin_m: float, ultimate_pa: float) -> float:
    """What one section of the pin bears in shear, in newtons."""
    found: float = working.sum(
        tr("Shear alone, one section"), "pin_shear_per_plane_n", {"fup": "ultimate_pa", "gM2": "gamma_m2_factor"},
        diameter_m=pin_m, ultimate_pa=ultimate_pa, gamma_m2_factor=_CHARACTERISTIC,
    )  # fmt: skip
    return found


def _moment(working: Working, pin_m: float, yield_pa: float) -> float:
    """What the pin bears in bending, in newton metres."""
    found: float = working.sum(
        tr("What the pin bears in bending"), "pin_moment_resistance_n_m", {"fyp": "yield_pa"},
        diameter_m=pin_m, yield_pa=yield_pa,
    )  # fmt: skip
    return found


def _double(working: Working, plates: tuple[float, float, float], moment_n_m: float, shear_n: float) -> float:
    """What the pin bears held on both sides, in newtons. plates: what pulls, play, what holds, in metres."""
    between_m, play_m, wall_m = plates
    lever_m = working.sum(
        tr("Lever of a pin held on both sides"), "pin_lever_m",
        {"b": "inner_plate_m", "c": "gap_m", "a": "outer_plate_m"},
        inner_plate_m=between_m, gap_m=play_m, outer_plate_m=wall_m,
    )  # fmt: skip
    found: float = working.sum(
        tr("Held on both sides: shear and bending together"), "pin_combined_pull_n",
        {"l": "lever_m", "MRd": "moment_resistance_n_m", "Fv,Rd": "shear_resistance_n"},
        lever_m=lever_m, moment_resistance_n_m=moment_n_m, shear_resistance_n=shear_n,
    )  # fmt: skip
    return found


def ball_topic(maker: Maker) -> Topic:
    """A tow ball's shank as a lever, against a pin in double shear."""
    dials = (
        maker.of_setting("shank", tr("Shank of the ball"), "ball_shank_unsaid", ("12 mm", "40 mm"), _PIN_STEPS),
        maker.of_setting("height", tr("Height of the pull over the plate"), "ball_lever_unsaid",
                         ("20 mm", "120 mm"), _LENGTHS),
        maker.of_setting("pin", tr("Pin diameter"), "hitch_pin_diameter", _PIN_ENDS, _PIN_STEPS),
        maker.steel_class(),
    )  # fmt: skip
    question = tr("Why is a tow ball no recovery point, however thick it looks?")
    return Topic(BenchTopic("ball", tr("A tow ball as a lever"), question, dials), _ball, lambda _working: None)


def _ball(working: Working) -> Told:
    plates = (
        working.setting("hitch_insert_side", tr("Insert between the walls")),
        working.setting("hitch_insert_play", tr("Play on each side of it")),
        working.setting("hitch_receiver_wall", tr("Wall that holds the pin")),
    )
    shank_m, height_m, pin_m = (working.at(key) for key in ("shank", "height", "pin"))
    yield_pa, ultimate_pa = steel_of(working)
    signs = {"fy": "yield_pa", "h": "lever_m"}
    bends = {"diameter_m": shank_m, "lever_m": height_m, "yield_pa": yield_pa}
    first_n = working.sum(tr("The shank first bends for good"), "shank_elastic_limit_n", signs, **bends)
    over_n = working.sum(tr("The shank bends over"), "shank_plastic_limit_n", signs, **bends)
    shear_n = _one_plane(working, pin_m, ultimate_pa)
    pin_n = _double(working, plates, _moment(working, pin_m, yield_pa), shear_n)
    times = working.sum(
        tr("How many times harder the same pull bends the ball's shank"), "ball_over_pin_ratio",
        {"h": "ball_lever_m", "b": "inner_plate_m", "c": "gap_m", "a": "outer_plate_m"},
        shank_m=shank_m, ball_lever_m=height_m, pin_m=pin_m,
        inner_plate_m=plates[0], gap_m=plates[1], outer_plate_m=plates[2],
    )  # fmt: skip
    between_m, play_m, wall_m = plates
    amounts = {"shank_m": shank_m, "height_m": height_m, "pin_m": pin_m, "between_m": between_m, "play_m": play_m,
               "wall_m": wall_m, "first_n": first_n, "over_n": over_n, "pin_n": pin_n, "times": times}  # fmt: skip
    return Told(_ball_means(working, first_n, over_n, pin_n), _ball_leaves_out(), amounts)


def _ball_means(working: Working, first_n: float, over_n: float, pin_n: float) -> str:
    words = {"first": first_n, "over": over_n, "pin": pin_n}
    shown = {key: working.show(value, Dimension.FORCE) for key, value in words.items()}
    said = tr(
        "Pulled {height} above its plate, the ball's shank first bends for good at {first} and bends over at {over}; a "
        "pin of the same steel, held on both sides, bears {pin}.",
        height=working.text("height"),
        **shown,
    )
    if over_n < pin_n:
        return f"{said} " + tr("One section carries all of it, on a lever, and a ball that snaps off flies.")
    return f"{said} " + tr(
        "Even where the shank bears more than this pin it is no recovery point: one section carries all of it, and a "
        "ball that snaps off flies."
    )


def _ball_leaves_out() -> tuple[str, ...]:
    return (
        tr("the thread and the step below the collar, where a shank cracks first"),
        tr("the plate, the nut and the weld that hold the ball"),
        tr("jerks, and a pull that is not level"),
    )

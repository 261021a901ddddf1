"""Two topics of the bench: a strap too strong or too weak for a vehicle, and what speed puts into a line."""

from inspector.gear.bench import BenchTopic, Dial
from inspector.language import tr
from inspector.rulebook.bench.parts import Maker, Told, Topic, Working
from inspector.rulebook.rigs.strap_band import SUITS, TOO_STRONG, band_words, strap_band, strap_fit
from inspector.units import Dimension

_STRENGTHS, _STRENGTH_STEPS = ("10 kN", "400 kN"), ("1 kN", "200 lbf")
_MASSES, _MASS_STEPS = ("500 kg", "8000 kg"), ("50 kg", "100 lb")
_NO_DRIVE_N = 0.0


def strap_topic(maker: Maker) -> Topic:
    """A strap too strong or too weak."""
    dials = (
        _strength(maker),
        maker.of_practice("mass", tr("Lighter vehicle, laden"), "3200 kg", _MASSES, _MASS_STEPS, Dimension.MASS),
        maker.of_practice("stretch", tr("Stretch at break"), "20 %", ("2 %", "40 %"), ("1 %", "1 %"), Dimension.RATIO),
        maker.of_practice("length", tr("Length of the strap"), "9 m", ("2 m", "30 m"), ("0.5 m", "1 ft")),
    )
    question = tr("Why is a stronger strap not a safer one?")
    return Topic(
        BenchTopic("strap", tr("A strap too strong or too weak"), question, dials), _strap, lambda _working: None
    )


def _strength(maker: Maker) -> Dial:
    """The strap's breaking strength."""
    return maker.of_practice(
        "strength", tr("Breaking strength of the strap"), "80 kN", _STRENGTHS, _STRENGTH_STEPS, Dimension.FORCE
    )


def _strap(working: Working) -> Told:
    strength_n, mass_kg, stretch, length_m = (working.at(key) for key in ("strength", "mass", "stretch", "length"))
    speed = working.setting("kinetic_speed_unsaid", tr("Speed as the strap comes taut"))
    low = working.setting("strap_band_low", tr("Least strength, in weights of the lighter vehicle"))
    high = working.setting("strap_band_high", tr("Greatest strength, in weights of the lighter vehicle"))
    ratio = working.sum(
        tr("Strength in weights of the lighter vehicle"), "strap_band_ratio",
        {"MBS": "breaking_n", "GVM": "vehicle_mass_kg"}, breaking_n=strength_n, vehicle_mass_kg=mass_kg,
    )  # fmt: skip
    stiffness = _stiffness(working, strength_n, stretch, length_m)
    peak_n = _peak(working, stiffness, mass_kg, speed)
    give_m = working.sum(
        tr("How far the strap stretches for that"), "stretch_m", {"F": "force_n", "k": "stiffness_n_per_m"},
        force_n=peak_n, stiffness_n_per_m=stiffness,
    )  # fmt: skip
    amounts = {"strength_n": strength_n, "mass_kg": mass_kg, "ratio": ratio, "low": low, "high": high,
               "peak_n": peak_n, "give_m": give_m, "length_m": length_m}  # fmt: skip
    return Told(_strap_means(working, amounts), _strap_leaves_out(), amounts)


def _stiffness(working: Working, strength_n: float, stretch: float, length_m: float) -> float:
    found: float = working.sum(
        tr("How stiff the strap is"), "strap_stiffness_n_per_m",
        {"MBS": "breaking_n", "e": "elongation_ratio", "L": "length_m"},
        breaking_n=strength_n, elongation_ratio=stretch, length_m=length_m,
    )  # fmt: skip
    return found


def _peak(working: Working, stiffness_n_per_m: float, mass_kg: float, speed_m_per_s: float) -> float:
    found: float = working.sum(
        tr("Peak of the pull, the stuck vehicle held fast"), "anchored_peak_n",
        {"T": "drive_n", "k": "stiffness_n_per_m", "m": "mass_kg", "v": "speed_m_per_s"},
        drive_n=_NO_DRIVE_N, stiffness_n_per_m=stiffness_n_per_m, mass_kg=mass_kg, speed_m_per_s=speed_m_per_s,
    )  # fmt: skip
    return found


def _strap_means(working: Working, amounts: dict[str, float]) -> str:
    book, mass_kg, strength_n = working.book, amounts["mass_kg"], amounts["strength_n"]
    fit = strap_fit(book, mass_kg, strength_n)
    words = {
        SUITS: tr("It suits this vehicle: {band} does."),
        TOO_STRONG: tr("It is too strong for this vehicle, which {band} would suit: it stretches little and loads both "
                       "attachments hard."),
    }  # fmt: skip
    weak = tr("It is too weak for this vehicle, which {band} would suit: a hard pull comes close to its strength.")
    says = words.get(fit, weak).format(band=band_words(strap_band(book, mass_kg), working.system))
    return tr(
        "The strap breaks at {ratio} times the weight of the lighter vehicle. {says} At the same speed it pulls with "
        "{peak} and stretches {give}.",
        ratio=working.show(amounts["ratio"], Dimension.FACTOR),
        says=says,
        peak=working.show(amounts["peak_n"], Dimension.FORCE),
        give=working.about(amounts["give_m"]),
    )


def _strap_leaves_out() -> tuple[str, ...]:
    return (
        tr("wheels that go on driving, which add to the peak, and a strap that stiffens as it stretches"),
        tr("age, sun, wet and wear, which take strength from the strap and make it stiffer"),
        tr("the points, shackles and pins, which often bear less than the strap"),
    )


def speed_topic(maker: Maker) -> Topic:
    """What speed puts into a line, and what that energy throws."""
    dials = (
        maker.of_setting(
            "speed",
            tr("Speed as the strap comes taut"),
            "kinetic_speed_unsaid",
            ("1 km/h", "30 km/h"),
            ("0.5 km/h", "0.5 mph"),
        ),
        maker.of_practice("mass", tr("Vehicle that pulls"), "3200 kg", _MASSES, _MASS_STEPS, Dimension.MASS),
        _strength(maker),
        maker.of_practice(
            "part",
            tr("Part that tears off"),
            _weight(maker, "bow_shackle"),
            ("0.1 kg", "15 kg"),
            ("0.1 kg", "0.2 lb"),
            Dimension.MASS,
            "flying_part_masses",
        ),
    )
    question = tr("What does a little more speed do, and does a lighter shackle make it safe?")
    return Topic(BenchTopic("speed", tr("Speed and energy"), question, dials), _speed, lambda _working: None)


def _weight(maker: Maker, kind: str) -> str:
    """What a generic part of a kind weighs, as text."""
    return f"{maker.book.roles[kind].weighs_kg:g} kg"


def _speed(working: Working) -> Told:
    speed, mass_kg, strength_n, part_kg = (working.at(key) for key in ("speed", "mass", "strength", "part"))
    length_m, stretch = _rope(working)
    energy_j = working.sum(
        tr("Energy that comes into the line"), "kinetic_energy_j", {"m": "mass_kg", "v": "speed_m_per_s"},
        mass_kg=mass_kg, speed_m_per_s=speed,
    )  # fmt: skip
    linear_n = _peak(working, _stiffness(working, strength_n, stretch, length_m), mass_kg, speed)
    bound_n = working.sum(
        tr("The same, for a strap that stiffens as it stretches"), "strap_bound_peak_n",
        {"T": "drive_n", "Fb": "breaking_n", "xb": "breaking_stretch_m", "m": "mass_kg", "v": "speed_m_per_s"},
        drive_n=_NO_DRIVE_N, breaking_n=strength_n, breaking_stretch_m=stretch * length_m, mass_kg=mass_kg,
        speed_m_per_s=speed,
    )  # fmt: skip
    soft_kg = working.book.roles["soft_shackle"].weighs_kg
    working.tell(tr("A soft shackle weighs"), working.show_mass(soft_kg), "common_practice")
    thrown, soft = (
        working.sum(says, "thrown_speed_m_per_s", {"E": "energy_j", "M": "part_kg"}, energy_j=energy_j, part_kg=kg)
        for says, kg in (
            (tr("Speed of the part, all the energy in it"), part_kg),
            (tr("Speed of a soft shackle"), soft_kg),
        )
    )
    range_m = working.sum(tr("How far the part may fly"), "throw_range_m", {"v": "speed_m_per_s"}, speed_m_per_s=thrown)
    amounts = {"speed": speed, "mass_kg": mass_kg, "strength_n": strength_n, "part_kg": part_kg, "energy_j": energy_j,
               "peak_n": max(linear_n, bound_n), "thrown": thrown, "soft": soft, "soft_kg": soft_kg,
               "range_m": range_m, "breaking_stretch_m": stretch * length_m}  # fmt: skip
    return Told(_speed_means(working, amounts), _speed_leaves_out(), amounts)


def _rope(working: Working) -> tuple[float, float]:
    """Length in metres and stretch at break of the strap, worn stiff."""
    length = working.length("9 m", tr("Length of the strap"))
    return length, working.setting("kinetic_stretch_least", tr("Stretch at break, worn stiff"))


def _speed_means(working: Working, amounts: dict[str, float]) -> str:
    said = tr(
        "At {speed} up to {peak} come into the line, and {energy} are stored in it. A part of {part} that tears off "
        "may leave at up to {thrown} and fly as far as {range}. A soft shackle is lighter, but the energy in the line "
        "is the same: it may leave at {soft}, and what it was tied to flies with the strap. Twice the speed "
        "is four times the energy.",
        speed=working.text("speed"),
        peak=working.show(amounts["peak_n"], Dimension.FORCE),
        energy=working.show(amounts["energy_j"], Dimension.ENERGY),
        part=working.text("part"),
        thrown=working.show(amounts["thrown"], Dimension.SPEED),
        range=working.about(amounts["range_m"]),
        soft=working.show(amounts["soft"], Dimension.SPEED),
    )
    if amounts["peak_n"] < amounts["strength_n"]:
        return said
    return tr("This strap parts before the peak, at {strength}. ", strength=working.text("strength")) + said


def _speed_leaves_out() -> tuple[str, ...]:
    return (
        tr("that the stuck vehicle gives way, and that the wheels go on driving, which adds to the peak"),
        tr("the air, the weight of the strap, and that not all the energy becomes motion: real parts fly less far"),
        tr("the parts themselves: which gives way first is not asked here"),
    )

"""The joints of a rig cut open, with the forces and numbers of this rig; a number that nobody knows is not drawn."""

from collections.abc import Callable

from inspector.drawings.joint_parts import tie_down_section, tube_section, weld_section
from inspector.drawings.rig_words import force_text, part_name
from inspector.drawings.shapes import Drawing, Shape, Text
from inspector.drawings.shear_parts import Words, ball_section, pin_section
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.rig_result import JointUse
from inspector.language import tr
from inspector.units import Dimension, System, show

_WIDTH_MM = 86.0
_HEAD_MM = 4.4
_ART_MM = 46.5  # where the section ends and the words begin


def has_picture(joint: JointUse) -> bool:
    """Whether a section shows how the pull goes through this joint."""
    return joint.picture in _SECTIONS


def joint_picture(joint: JointUse, system: System = System.METRIC) -> Drawing:
    """The section of a joint that has one, 86 mm wide and as high as its words."""
    section, head = _SECTIONS[joint.picture], _heads()[joint.picture]
    shapes: list[Shape] = [Text((0.5, 3.4), head, LABEL_MM, bold=True), *section(joint, system)]
    said = _said(joint, system)
    top_mm = _ART_MM
    for text in said:
        for line in wrapped(text, _WIDTH_MM - 1.0):
            shapes.append(Text((0.5, top_mm + 0.78 * LEADING_MM), line, LABEL_MM))
            top_mm += LEADING_MM
    title = tr("{one} to {other}", one=part_name(joint.one), other=part_name(joint.other))
    return Drawing(_WIDTH_MM, top_mm + 1.0, tuple(shapes), title, " ".join((f"{title}: {head}.", *said)))


def _heads() -> dict[str, str]:
    return {
        "double_shear": tr("Pin held on both sides: double shear"),
        "single_shear": tr("Ball held on one side: single shear"),
        "weld_tension": tr("Hole beside the shank: weld in tension"),
        "bare_tube": tr("Eye over the pin of an empty tube"),
        "tie_down": tr("Tie-down point"),
    }


def _pin(joint: JointUse, system: System) -> list[Shape]:
    half = (tr("half:"), force_text(joint.force_n / 2, system))
    return pin_section(_pull(joint, system), half, _number(joint, "pin_m", tr("pin"), Dimension.LENGTH, system))


def _ball(joint: JointUse, system: System) -> list[Shape]:
    neck = _number(joint, "shank_m", tr("neck"), Dimension.LENGTH, system)
    return ball_section(_pull(joint, system), _lever(joint, system), neck)


def _weld(joint: JointUse, system: System) -> list[Shape]:
    return weld_section(_pull(joint, system), _lever(joint, system))


def _tube(joint: JointUse, system: System) -> list[Shape]:
    pin = _number(joint, "pin_m", tr("pin"), Dimension.LENGTH, system)
    return tube_section(_pull(joint, system), _lever(joint, system), pin)


def _tie_down(joint: JointUse, system: System) -> list[Shape]:
    return tie_down_section(_pull(joint, system))


_SECTIONS: dict[str, Callable[[JointUse, System], list[Shape]]] = {
    "double_shear": _pin,
    "single_shear": _ball,
    "weld_tension": _weld,
    "bare_tube": _tube,
    "tie_down": _tie_down,
}


def _pull(joint: JointUse, system: System) -> Words:
    return tr("pull"), force_text(joint.force_n, system)


def _lever(joint: JointUse, system: System) -> Words:
    return (tr("lever"), *_number(joint, "lever_m", "", Dimension.LENGTH, system))


def _number(joint: JointUse, name: str, word: str, dimension: Dimension, system: System) -> Words:
    """A figure with its word in one line; nothing where it is missing."""
    value = joint.figure(name)
    return () if value is None else (f"{word} {show(value, dimension, system)}".strip(),)


def _said(joint: JointUse, system: System) -> tuple[str, ...]:
    """What the section shows, then the numbers of this rig."""
    meanings = {
        "double_shear": tr("The pin is held on both sides of the pull: there is no lever, and two sections share it."),
        "single_shear": tr("The pull acts on a lever: it bends the neck, and one section carries it all."),
        "weld_tension": tr("The pull acts beside the shank's middle: it opens the weld from one side."),
        "bare_tube": tr("Nothing fills the tube: the pin bends, and the lip of the tube cuts the strap."),
        "tie_down": tr("Made to hold a parked vehicle on a trailer, not to pull one."),
    }
    return (meanings[joint.picture], *_numbers(joint, system))


def _numbers(joint: JointUse, system: System) -> tuple[str, ...]:
    figures = (
        ("moment_n_m", Dimension.TORQUE, tr("It bends with {value}.")),
        ("stress_pa", Dimension.STRESS, _stress_words(joint)),
        ("first_set_n", Dimension.FORCE, tr("It first bends for good at a pull of {value}.")),
        ("strength_n", Dimension.FORCE, tr("Least pull that breaks it: {value}.")),
    )
    found = [(words, joint.figure(name), dimension) for name, dimension, words in figures]
    said = [
        words.format(value=show(value, dimension, system)) for words, value, dimension in found if value is not None
    ]
    return (" ".join(said),) if said else ()


def _stress_words(joint: JointUse) -> str:
    """Which section the stress belongs to."""
    words = {
        "double_shear": tr("Shear stress in each section: {value}."),
        "weld_tension": tr("Stress in the weld on the side that tears: {value}."),
    }
    return words.get(joint.picture, tr("Bending stress there: {value}."))

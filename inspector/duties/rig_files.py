"""Rigs as files that a person reads and writes: TOML, tags in the order in which they are joined, figures as typed."""

import math
from pathlib import Path

import tomli_w

from inspector.duties.rig_parts import check_form
from inspector.duties.typed_tables import Typed, decoded
from inspector.gear.rig import Angle, Conditions, Footing, Method, NamedJoint, Rig
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension, Figure, read

RIG_KEYS = ("name", "method", "pulling", "bogged", "runs", "dampers", "trip", "note", "conditions", "angles", "joint")
_CONDITIONS = (
    "bogged_in", "pulling_on", "slope", "speed", "slack", "drive", "wet", "layers", "scale", "distance_rule",
)  # fmt: skip
_AS_NOBODY_SAID = Conditions()
_CHANGED_OVER = str.maketrans(".,", ",.")
_SAME = 1e-9


def read_rig(text: str, decimal: str = ".") -> Rig:
    """The rig of a file's text, not yet held against any register.

    decimal: the club's decimal sign, for a file that does not name its own. Raises Refused with the field.
    """
    typed = Typed.of_file(text, tr("rig file"), decimal)
    typed.check_keys(("decimal", *RIG_KEYS))
    return rig_in(typed)


def rig_of_file(file: Path, decimal: str = ".") -> Rig:
    """The rig that stands in a file of this machine."""
    return read_rig(decoded(file.read_bytes(), file.name), decimal)


def rig_in(typed: Typed) -> Rig:
    """The rig of a table whose keys are checked."""
    typed.need("name", "method", "bogged", "runs")
    angles = typed.table("angles")
    found = Rig(
        name=typed.text("name"),
        method=typed.word("method", Method) or Method.KINETIC,
        bogged=typed.text("bogged"),
        pulling=typed.text("pulling"),
        runs=typed.lists("runs"),
        conditions=_conditions(typed.table("conditions")),
        angles=tuple(_angle(angles, tag) for tag in angles.keys),
        joints=tuple(_joint(one) for one in typed.tables("joint")),
        trip=typed.text("trip"),
        note=typed.text("note"),
        dampers=typed.texts("dampers"),
    )
    check_form(found)
    return found


def rig_text(rig: Rig, decimal: str = ".") -> str:
    """The file of a rig; reading it gives the same rig. decimal: the sign that the file names.

    A figure that was typed with the other sign is written with this one, where it would else be read as another.
    """
    head = {"name": rig.name, "method": rig.method.value, "pulling": rig.pulling, "bogged": rig.bogged}
    head |= {"trip": rig.trip, "note": rig.note, "decimal": decimal}
    tables: dict[str, object] = {"conditions": _conditions_table(rig.conditions, decimal)}
    tables["angles"] = {one.at: _figure_text(one.figure, decimal) for one in rig.angles}
    tables["joint"] = [{"one": one.one, "other": one.other, "how": one.how} for one in rig.joints]
    said = tomli_w.dumps({key: value for key, value in head.items() if value})
    below = tomli_w.dumps({key: value for key, value in tables.items() if value})
    return f"{said}{_runs_text(rig)}" + (f"\n{below}" if below else "")


def _runs_text(rig: Rig) -> str:
    """The runs, each on a line, so that a person sees what is joined to what."""
    lines = (", ".join(_quoted(tag) for tag in run) for run in rig.runs)
    laid = ", ".join(_quoted(tag) for tag in rig.dampers)
    return (
        "runs = [\n" + "".join(f"    [{line}],\n" for line in lines) + "]\n" + (f"dampers = [{laid}]\n" if laid else "")
    )


def _quoted(text: str) -> str:
    """The text as the file writes it."""
    return tomli_w.dumps({"x": text}).removeprefix("x = ").rstrip("\n")


def _conditions(typed: Typed) -> Conditions:
    typed.check_keys(_CONDITIONS)
    return Conditions(
        bogged_in=typed.word("bogged_in", Footing),
        pulling_on=typed.word("pulling_on", Footing),
        slope=typed.figure("slope", Dimension.ANGLE),
        speed=typed.figure("speed", Dimension.SPEED),
        slack=typed.figure("slack", Dimension.LENGTH),
        drive=typed.figure("drive", Dimension.RATIO),
        wet=typed.yes("wet"),
        layers=typed.whole("layers"),
        scale=typed.text("scale") if typed.has("scale") else _AS_NOBODY_SAID.scale,
        distance_rule=typed.text("distance_rule") if typed.has("distance_rule") else _AS_NOBODY_SAID.distance_rule,
    )


def _conditions_table(known: Conditions, decimal: str) -> dict[str, object]:
    """What somebody said of the pull, and nothing else."""
    said = {key: getattr(known, key) for key in _CONDITIONS}
    return {key: _plain(value, decimal) for key, value in said.items() if value != getattr(_AS_NOBODY_SAID, key)}


def _figure_text(figure: Figure, decimal: str) -> str:
    """As it was typed, its signs changed over where only that is read as the same figure."""
    typed = figure.as_typed
    for text in (typed, typed.translate(_CHANGED_OVER)):
        try:
            again = read(text, figure.dimension, field="figure", decimal=decimal)
        except Refused:
            continue
        if math.isclose(again.si, figure.si, rel_tol=_SAME):
            return text
    return typed


def _plain(value: object, decimal: str) -> object:
    if isinstance(value, Figure):
        return _figure_text(value, decimal)
    return value.value if isinstance(value, Footing) else value


def _angle(angles: Typed, tag: str) -> Angle:
    figure = angles.figure(tag, Dimension.ANGLE)
    assert figure is not None  # the key is there, and TOML has no empty value
    return Angle(tag, figure)


def _joint(typed: Typed) -> NamedJoint:
    typed.check_keys(("one", "other", "how"))
    typed.need("one", "other", "how")
    return NamedJoint(typed.text("one"), typed.text("other"), typed.text("how"))

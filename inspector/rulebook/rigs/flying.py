"""What flies, and how fast, if one part of a loaded rig lets go; and how far away people stand."""

from inspector.gear.rig_result import Flying
from inspector.language import tr
from inspector.mechanics import energy, stand_off
from inspector.mechanics.stand_off import DistanceRule
from inspector.refused import Refused
from inspector.rulebook.rigs.layout import Layout, Part
from inspector.rulebook.rigs.loads import Loaded
from inspector.units import Dimension, System, show


def flying(layout: Layout, loaded: Loaded, system: System) -> tuple[Flying, ...]:
    """For each piece of the rig, the parts that fly with it, all of the line's energy taken as their motion."""
    return tuple(
        one
        for part in layout.parts.values()
        if part.piece is not None
        if (one := _flying(layout, loaded, part, system))
    )


def _flying(layout: Layout, loaded: Loaded, part: Part, system: System) -> Flying | None:
    sources = set(loaded.load.at)
    between = _between(layout, part.tag, sources)
    tags = (part.tag,) if part.tag in sources else tuple(tag for tag in between if tag not in sources)
    mass_kg = sum(_mass(layout.parts[tag]) for tag in tags)
    if mass_kg <= 0:
        return None
    speed = energy.thrown_speed_m_per_s(loaded.load.energy_j, mass_kg)
    said = tr(
        "If {tag} lets go, {parts} ({mass}) may fly with up to {speed}.",
        tag=part.tag,
        parts=", ".join(tags),
        mass=show(mass_kg, Dimension.MASS, system, 1),
        speed=show(speed, Dimension.SPEED, system),
    )
    return Flying(part.tag, tags, mass_kg, speed, loaded.load.energy_j, said)


def _mass(part: Part) -> float:
    """A generic one of its kind in kg: lighter than most, since the lighter part flies faster."""
    if part.text is None or part.piece is None:
        return 0.0
    length = part.piece.judged.dossier.item.size("length")
    return part.text.weighs_kg * (length.si if part.text.per_metre and length else 1.0)


def _between(layout: Layout, tag: str, sources: set[str]) -> list[str]:
    """The way from a part to the nearest source of the pull, both ends with it."""
    ways = [[tag]]
    seen = {tag}
    while ways:
        way = ways.pop(0)
        if way[-1] in sources:
            return way
        for other in layout.near(way[-1]):
            if other not in seen:
                seen.add(other)
                ways.append([*way, other])
    return [tag]


def stand_off_of(layout: Layout) -> tuple[float, str]:
    """How far people stand from the line, in metres, and which rule asks for it."""
    line_m = sum(_length(part) for part in layout.of_role("line"))
    strap_m = sum(_length(part) for part in layout.of_role("stretch", "strap"))
    name = layout.facts.rig.conditions.distance_rule
    try:
        rule = DistanceRule(name)
    except ValueError:
        listed = ", ".join(one.value for one in DistanceRule)
        why = tr("“{name}” is no rule for the distance.", name=name)
        raise Refused(tr("distance rule"), why, tr("Use one of: {rules}.", rules=listed)) from None
    governing = stand_off.governing_distance_rule(line_m, strap_m) if rule is DistanceRule.LONGEST else rule
    try:
        return stand_off.stand_off_m(line_m, strap_m, rule), rule_word(governing)
    except ValueError:
        why = tr("That rule needs a length which this rig does not have.")
        raise Refused(tr("distance rule"), why, tr("Use longest.")) from None


def longest_of(layout: Layout) -> float:
    """How far the longest of all rules asks people to stand, in metres, whichever rule was chosen."""
    line_m = sum(_length(part) for part in layout.of_role("line"))
    strap_m = sum(_length(part) for part in layout.of_role("stretch", "strap"))
    return stand_off.stand_off_m(line_m, strap_m, DistanceRule.LONGEST)


def _length(part: Part) -> float:
    size = part.piece.judged.dossier.item.size("length") if part.piece else None
    return size.si if size else 0.0


def rule_choices() -> tuple[tuple[str, str], ...]:
    """Every rule for the distance: its word and its name."""
    return tuple((rule_word(one), one.value) for one in DistanceRule)


def rule_word(rule: DistanceRule) -> str:
    """A rule for the distance as it prints."""
    words = {
        DistanceRule.LONGEST: tr("the longest of all rules"),
        DistanceRule.ONE_LINE: tr("one length of the line"),
        DistanceRule.TWO_LINES: tr("two lengths of the line"),
        DistanceRule.STRAP_AND_HALF: tr("one and a half lengths of the strap, from either vehicle"),
        DistanceRule.FOUR_STRAPS: tr("four lengths of the strap"),
        DistanceRule.TWENTY_METRES: tr("twenty metres"),
    }
    return words[rule]

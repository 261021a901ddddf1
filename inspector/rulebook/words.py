"""The names of things in sentences: purposes, quantities, ratings, months. Small words, one place."""

from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.item import Item, Provenance
from inspector.gear.kind import Basis, Kind, Service
from inspector.gear.outcome import Purpose
from inspector.gear.verdict import Value
from inspector.language import each_once_a_language, once_a_language, tr, within
from inspector.units import Dimension, System, show, show_typed


def purpose_word(purpose: Purpose) -> str:
    """What the piece is pulled for."""
    return _purpose_words()[purpose]


@each_once_a_language
def for_purposes(purposes: tuple[Purpose, ...]) -> str:
    """What it speaks of alone: "for static pull and road towing"; nothing where it is all."""
    named = listed([purpose_word(one) for one in purposes])
    return tr("for {purposes}", purposes=named) if named else ""


@once_a_language
def _purpose_words() -> dict[Purpose, str]:
    return {
        Purpose.KINETIC: tr("kinetic pull"),
        Purpose.STATIC: tr("static pull"),
        Purpose.TOWING: tr("road towing"),
    }


def service_word(service: Service) -> str:
    """How hard a life the piece leads."""
    return _service_words()[service]


@once_a_language
def _service_words() -> dict[Service, str]:
    return {
        Service.NORMAL: tr("normal service"),
        Service.SEVERE: tr("salt or mud service, or an unknown past"),
        Service.SPECIAL: tr("special service, after an event, heat or chemicals"),
    }


def listed(parts: list[str]) -> str:
    """ "a", "a and b", "a, b and c"."""
    if len(parts) < 2:
        return "".join(parts)
    return tr("{first} and {last}", first=", ".join(parts[:-1]), last=parts[-1])


def quantity_word(name: str, kind: Kind) -> str:
    """A quantity's name as a person says it."""
    prefix, _, key = name.partition(".")
    if prefix == "check":
        check = kind.check(key)
        return check.name if check else key
    if not key:
        return named_quantity(name)
    if prefix == "new":
        return tr("{what} as new", what=_size_name(key, kind))
    measure = kind.measure(key)
    named = within(measure.name) if measure else key
    if prefix == "loss":
        return tr("Loss of {what}", what=named)
    return tr("Growth of {what}", what=named) if prefix == "growth" else named[:1].upper() + named[1:]


def _size_name(key: str, kind: Kind) -> str:
    return next((size.name for size in kind.sizes if size.key == key), key)


def named_quantity(name: str) -> str:
    """A quantity of the catalogue as a person says it."""
    names = _quantity_names()
    return names[name] if name in names else _form_names()[name]


@once_a_language
def _form_names() -> dict[str, str]:
    """Those of how it was booked in and in which form it came, and of what called it in."""
    return {
        "rating_over_sizes": tr("Its rating over the most that its sizes can bear"),
        "weld_throat": tr("Throat of its weld as new"),
        "visit_age": tr("Time since it came along for one trip"),
        "visit_days": tr("time to the end of that trip"),
        "home_made_paper": tr("What stands for its strength"),
        "open_recalls": tr("Recalls it stands under"),
        "open_remedies": tr("Remedies of a recall not yet inspected"),
    }


@once_a_language
def _quantity_names() -> dict[str, str]:
    return {
        "history": tr("Its past"),
        "rating_stated": tr("Where its rating is read"),
        "design_factor": tr("Design factor"),
        "age": tr("Age"),
        "inspection_age": tr("Time since the last inspection"),
        "inspection_interval": tr("time allowed between inspections"),
        "pull_count": tr("Pulls since new"),
        "open_events": tr("Overloads, drops or run-overs not yet inspected"),
        "harmful_exposures": tr("Heat or chemical exposures not yet inspected"),
        "open_doubts": tr("Doubts voiced and not yet inspected"),
        "open_strikes": tr("Entries struck and not yet inspected anew"),
        "open_fittings": tr("Times it was fitted to a vehicle and not yet inspected there"),
        "open_finds": tr("Times it came back from outside and was not yet inspected"),
        "open_repairs": tr("Repairs and new parts not yet inspected"),
        "open_labels": tr("Markings written down anew and not yet inspected"),
        "open_evidence": tr("Incidents that keep it as evidence"),
        "open_releases": tr("Releases from evidence not yet inspected"),
        "changed_figures": tr("Values changed after a preview had held or retired it"),
        "frozen_exposures": tr("Days frozen while wet, not yet inspected"),
        "hottest": tr("Greatest heat"),
        "fibre_heat_limit": tr("what its fibre bears"),
        "metal_heat_limit": tr("what its metal bears"),
        "core_heat": tr("Heat at the core"),
        "identity": tr("Maker and batch"),
        "shackle_pin": tr("Pin against body"),
        "ball_in_coupler": tr("Ball against coupling"),
        "wires_held": tr("broken wires that call for a competent person"),
        "wires_discard": tr("broken wires that end the rope"),
        "wires_held_long": tr("broken wires over thirty diameters that call for a competent person"),
        "wires_discard_long": tr("broken wires over thirty diameters that end the rope"),
        "wall_relied": tr("Wall that can be relied on"),
        "wall_rough_allowed": tr("Wall, allowing for a rough face"),
        "required_wall": tr("wall that must be left"),
        "wall_life": tr("Time until the wall is used up"),
        "wall_estimate": tr("Wall today, reckoned"),
        "wall_reading_age": tr("Time since the last wall reading"),
        "wall_reading_interval": tr("time a wall reading may stand"),
        "wall_gauge": tr("Gauge tried on its block on the day of the reading"),
        "ageing_loss": tr("Strength lost to age and sun"),
        "abrasion_loss": tr("Strength lost to abrasion"),
        "strength_left": tr("Strength left"),
    }


def value_word(value: Value | None, kind: Kind, check: str, system: System, finer_places: int = 0) -> str:
    """A value as it prints: as typed where the officer typed it, else in the club's units."""
    if value is None:
        return tr("not known")
    if value.number is None or value.dimension is None:
        return _grade_word(value.word, kind, check)
    if value.dimension is Dimension.DAYS and abs(value.number) >= 999_999:
        return tr("no end in sight")
    if value.as_typed:
        return show_typed(value.as_typed)
    return show(value.number, value.dimension, system, finer_places)


def plain_value_word(word: str) -> str:
    """A word that a rule sees, such as a grade, where no check says more of it."""
    return tr("slight") if word == "slight" else tr("bad") if word == "bad" else _value_words().get(word, word)


def _grade_word(word: str, kind: Kind, key: str) -> str:
    check = kind.check(key) if word in {"bad", "slight"} else None
    if check:
        return check.bad.rstrip(".") if word == "bad" else check.slight.rstrip(".") or tr("slight")
    return _value_words().get(word, word)


@once_a_language
def _value_words() -> dict[str, str]:
    return {
        "good": tr("good"),
        "known": tr("known"),
        "inspected": tr("inspected since it came"),
        "unanswered": tr("unknown"),
        "piece": tr("on the piece"),
        "certificate": tr("on its certificate"),
        "memory": tr("from memory only"),
        "none": tr("nowhere"),
        "retired": tr("retired"),
        "odd": tr("no thicker than the body"),
        "thicker": tr("thicker than the body"),
        "mismatched": tr("of another size"),
        "matched": tr("of its size"),
        "incomplete": tr("not both written down"),
        "not too hot": tr("not too hot"),
        "fibre core too hot": tr("too hot for its fibre core"),
        "core unknown, too hot": tr("too hot for a fibre core, and its core is not known"),
        "tried": tr("yes"),
        "untried": tr("no, or not stated"),
    }


def must_word(must: str, limit: str, quantity: str = "") -> str:
    """The demand in words; what must not be is told by what it is asked of."""
    if must == "none_of":
        wanted = _wanted_words()
        return wanted.get(quantity) or wanted[""]
    return _demands()[must].replace("{limit}", limit)


@once_a_language
def _demands() -> dict[str, str]:
    return {
        "at_least": tr("at least {limit}"),
        "at_most": tr("at most {limit}"),
        "above": tr("more than {limit}"),
        "below": tr("less than {limit}"),
        "present": tr("must be known"),
    }


@once_a_language
def _wanted_words() -> dict[str, str]:
    return {
        "": tr("no fault"),
        "history": tr("known, or inspected since it came"),
        "rating_stated": tr("on the piece or its certificate"),
        "retired": tr("not retired"),
        "shackle_pin": tr("thicker than the body"),
        "ball_in_coupler": tr("of its size"),
        "identity": tr("both written down"),
        "core_heat": tr("not too hot for a fibre core"),
        "wall_gauge": tr("tried that day"),
        "home_made_paper": tr("on a certificate"),
    }


def marked_words(item: Item) -> str:
    """What the piece is marked with, as it was typed."""
    rating = item.rating
    if rating.figure is None or rating.basis is Basis.UNRATED:
        return tr("no rating")
    words = f"{_rated_words()[rating.basis]} {rating.figure.as_typed}"
    if rating.basis is Basis.WLL and rating.design_factor:
        words += tr(", factor {factor}", factor=show(rating.design_factor, Dimension.FACTOR))
    if rating.stated_on != "memory":
        return words
    told = item.facts.rating.stated_on == "piece"
    return words + (tr(" (its maker's word alone)") if told else tr(" (from memory)"))


@once_a_language
def _rated_words() -> dict[Basis, str]:
    return {
        Basis.WLL: tr("WLL"),
        Basis.MBS: tr("MBS"),
        Basis.TOWED_MASS: tr("trailer"),
        Basis.LINE_PULL: tr("line pull"),
    }


def provenance_word(provenance: Provenance) -> str:
    """What is known of its past."""
    return _provenance_words()[provenance]


@once_a_language
def _provenance_words() -> dict[Provenance, str]:
    return {
        Provenance.NEW_CERTIFIED: tr("new, with certificate"),
        Provenance.NEW: tr("new"),
        Provenance.SECOND_HAND: tr("second-hand"),
        Provenance.UNKNOWN: tr("unknown"),
        Provenance.GIFT: tr("a gift"),
        Provenance.HOME_MADE: tr("home-made"),
        Provenance.BORROWED: tr("borrowed"),
    }


def fitted_words(fitted: Fitted) -> str:
    """The vehicle and the place on it: "V-04, front left"."""
    place = place_words(fitted)
    return f"{fitted.vehicle}, {place}" if place else fitted.vehicle


def place_words(fitted: Fitted) -> str:
    """The place on a vehicle: "front left"; empty where nobody wrote it down."""
    words = _place_words()
    return " ".join(filter(None, (words.get(fitted.end), words.get(fitted.side))))


@once_a_language
def _place_words() -> dict[End | Side, str]:
    return {
        End.FRONT: tr("front"),
        End.REAR: tr("rear"),
        Side.LEFT: tr("left"),
        Side.MIDDLE: tr("middle"),
        Side.RIGHT: tr("right"),
    }

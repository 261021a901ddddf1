"""Words for what is chosen in forms."""

from inspector.gear.fitting import End, Side
from inspector.gear.item import Fixing, Provenance
from inspector.gear.kind import Basis
from inspector.gear.outcome import Purpose
from inspector.gear.use import Event, Weather
from inspector.language import tr

Choices = list[tuple[str, object]]


def weather() -> Choices:
    """What a piece may be exposed to."""
    return [
        (tr("salt: sea water, spray, salted road"), Weather.SALT),
        (tr("mud or sand in it"), Weather.MUD),
        (tr("sun"), Weather.SUN),
        (tr("heat"), Weather.HEAT),
        (tr("chemicals: battery acid, fuel, cleaner"), Weather.CHEMICAL),
        (tr("frost while it was wet"), Weather.FROST),
    ]


def events() -> Choices:
    """What happened beyond an ordinary pull."""
    return [
        (tr("nothing beyond an ordinary pull"), Event.NONE),
        (tr("overload: a jerk, a stall, too fast, snagged"), Event.OVERLOAD),
        (tr("dropped onto something hard"), Event.DROPPED),
        (tr("a vehicle ran over it"), Event.RAN_OVER),
    ]


def yes_or_no() -> Choices:
    """Said or not said."""
    return [(tr("nobody said"), None), (tr("yes"), True), (tr("no"), False)]


def bases() -> Choices:
    """What the figure on a piece means."""
    return [
        (tr("no rating on it"), Basis.UNRATED),
        (tr("working load limit (WLL)"), Basis.WLL),
        (tr("minimum breaking strength (MBS)"), Basis.MBS),
        (tr("greatest mass of the trailer"), Basis.TOWED_MASS),
        (tr("line pull of a winch"), Basis.LINE_PULL),
    ]


def stated_on(*, memory: bool) -> Choices:
    """Where the rating stands, which nobody presumes. One from memory is written down and never believed."""
    found: Choices = [(tr("not said"), ""), (tr("on the piece itself"), "piece")]
    found.append((tr("on its certificate"), "certificate"))
    return [*found, (tr("from memory"), "memory")] if memory else found


def pasts() -> Choices:
    """In which form a piece came in."""
    return [
        (tr("history unknown"), Provenance.UNKNOWN),
        (tr("new, with a certificate"), Provenance.NEW_CERTIFIED),
        (tr("new"), Provenance.NEW),
        (tr("second-hand"), Provenance.SECOND_HAND),
        (tr("a gift"), Provenance.GIFT),
        (tr("home-made"), Provenance.HOME_MADE),
        (tr("borrowed"), Provenance.BORROWED),
    ]


def ends() -> Choices:
    """Which end of the vehicle."""
    return [(tr("not said"), End.UNKNOWN), (tr("front"), End.FRONT), (tr("rear"), End.REAR)]


def sides() -> Choices:
    """Which side, as the driver sees it."""
    words = {Side.UNKNOWN: tr("not said"), Side.LEFT: tr("left"), Side.RIGHT: tr("right"), Side.MIDDLE: tr("middle")}
    return [(words[one], one) for one in Side]


def fixings() -> Choices:
    """What holds a part to its vehicle."""
    return [(tr("not said"), Fixing.UNKNOWN), (tr("bolts"), Fixing.BOLTS), (tr("welds alone"), Fixing.WELDS)]


def purposes() -> list[tuple[str, Purpose]]:
    """What a piece may be kept for."""
    words = {
        Purpose.KINETIC: tr("kinetic pull"),
        Purpose.STATIC: tr("static pull (winch, tow-out)"),
        Purpose.TOWING: tr("road towing"),
    }
    return [(words[one], one) for one in Purpose]

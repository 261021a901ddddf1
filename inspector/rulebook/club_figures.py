"""Figures of a club's file: what a text measures, which way is stricter, and how far a figure may be loosened."""

from msgspec import Struct

from inspector.gear.rulebooks import Direction
from inspector.language import tr
from inspector.refused import Refused
from inspector.rulebook.judge import SAME_RATIO
from inspector.units import Dimension, Figure, read

OWN_ROOM_RATIO = 0.25  # how much of itself a figure without a printed source may be loosened by
PRINTED = {"read", "second_hand", "from_memory"}
_SOUGHT = (
    Dimension.DAYS,
    Dimension.LENGTH,
    Dimension.TORQUE,
    Dimension.FORCE,
    Dimension.STRESS,
    Dimension.SPEED,
    Dimension.ANGLE,
    Dimension.RATE,
    Dimension.TEMPERATURE,
    Dimension.FACTOR,
)
_WORSE_WHEN_MORE = {"at_most", "below"}


def dimension_of(text: str) -> Dimension | None:
    """What a figure's text measures; None where it is no figure. A share is told by its sign."""
    sought = (Dimension.RATIO,) if "%" in text else _SOUGHT
    return next((one for one in sought if _reads(text, one)), None)


def _reads(text: str, dimension: Dimension) -> bool:
    try:
        read(text, dimension, field="")
    except Refused:
        return False
    return True


def figure_fault(text: str, dimension: Dimension, example: str) -> str:
    """Why a text is no figure of this dimension; empty where it is one."""
    wanted = tr("{what} such as {example} is wanted", what=measure_word(dimension), example=example)
    if _reads(text, dimension) and (dimension is not Dimension.RATIO or "%" in text):
        return _range_fault(read(text, dimension, field=""), wanted)
    found = dimension_of(text)
    if found is None:
        return tr("“{text}” is no figure; {wanted}.", text=text, wanted=wanted)
    return tr("“{text}” is {what}; {wanted}.", text=text, what=measure_word(found), wanted=wanted)


def _range_fault(figure: Figure, wanted: str) -> str:
    if figure.si <= 0:
        return tr("“{text}” is not above zero; {wanted}.", text=figure.as_typed, wanted=wanted)
    if figure.dimension is Dimension.RATIO and figure.si > 1:
        return tr("“{text}” is more than the whole; {wanted}.", text=figure.as_typed, wanted=wanted)
    return ""


def measure_word(dimension: Dimension) -> str:
    """What a figure measures, as a person says it."""
    words = {
        Dimension.LENGTH: tr("a length"),
        Dimension.DAYS: tr("a time"),
        Dimension.RATIO: tr("a share"),
        Dimension.FORCE: tr("a force"),
        Dimension.TORQUE: tr("a torque"),
        Dimension.STRESS: tr("a stress"),
        Dimension.SPEED: tr("a speed"),
        Dimension.ANGLE: tr("an angle"),
        Dimension.RATE: tr("a loss a year"),
        Dimension.TEMPERATURE: tr("a temperature"),
    }
    return words.get(dimension, tr("a plain number"))


def stricter_is_more(must: str) -> bool:
    """Whether a greater limit is the stricter one for a rule that demands this."""
    return must not in _WORSE_WHEN_MORE


def direction(packaged: float, club: float, *, more_is_stricter: bool) -> Direction:
    """How the club's figure stands to the packaged one."""
    if abs(club - packaged) <= SAME_RATIO * abs(packaged):
        return Direction.SAME
    return Direction.STRICTER if (club > packaged) == more_is_stricter else Direction.LOOSER


class Licence(Struct, frozen=True):
    """A figure that another printed source carries, and the profile that names it."""

    si: float
    text: str
    profile: str
    source: str


class Figures(Struct, frozen=True):
    """A packaged figure and the club's, in SI and as text, and what stands behind the packaged one."""

    packaged: float
    packaged_text: str
    club: float
    more_is_stricter: bool
    certainty: str
    source: str
    fixed: bool = False

    @property
    def direction(self) -> Direction:
        """How the club's figure stands to the packaged one."""
        return direction(self.packaged, self.club, more_is_stricter=self.more_is_stricter)


def loosening_fault(asked: Figures, licences: tuple[Licence, ...]) -> str:
    """Why a figure may not be loosened as far as the club asks; empty where it may, or where nothing is loosened."""
    if asked.direction is not Direction.LOOSER:
        return ""
    if asked.fixed:
        return tr(
            "It may be tightened, never loosened: a single one is a fault. The packaged figure is {packaged}.",
            packaged=asked.packaged_text,
        )
    if any(_within(asked, one.si) for one in licences):
        return ""
    if asked.certainty in PRINTED:
        return _printed_fault(asked, licences)
    room = 1 - OWN_ROOM_RATIO if asked.more_is_stricter else 1 + OWN_ROOM_RATIO
    if _within(asked, asked.packaged * room):
        return ""
    return tr(
        "It may be loosened by a quarter of the packaged {packaged}, no further; no printed source stands behind it.",
        packaged=asked.packaged_text,
    )


def _within(asked: Figures, mildest: float) -> bool:
    """Whether the club's figure is no milder than this one."""
    return direction(mildest, asked.club, more_is_stricter=asked.more_is_stricter) is not Direction.LOOSER


def _is_milder(asked: Figures, one: Licence) -> bool:
    return direction(asked.packaged, one.si, more_is_stricter=asked.more_is_stricter) is Direction.LOOSER


def _printed_fault(asked: Figures, licences: tuple[Licence, ...]) -> str:
    stands = tr("{packaged} stands in print ({source})", packaged=asked.packaged_text, source=asked.source)
    milder = [one for one in licences if _is_milder(asked, one)]
    if not milder:
        return tr("{stands}, and no profile of this program carries a milder figure from print.", stands=stands)
    carried = "; ".join(f"{one.text} ({one.source})" for one in milder)
    return tr(
        "{stands}; it may be loosened as far as another printed source goes: {carried}.", stands=stands, carried=carried
    )

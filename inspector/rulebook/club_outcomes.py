"""What a club may change of a rule's outcome: only to the stricter side, and only where it makes sense."""

from collections.abc import Iterator

from msgspec import Struct

from inspector.gear.rulebooks import Change, Direction, Part
from inspector.language import tr
from inspector.rulebook.club_texts import Entry
from inspector.rulebook.texts import Rule

_ELSE = ("note", "derate", "hold", "retire")
_MISSING = ("note", "hold")
_ABOUT_PAPERS = {
    "history",
    "rating_stated",
    "design_factor",
    "inspection_age",
    "open_events",
    "harmful_exposures",
    "wall_reading_age",
    "wall_estimate",
}


class Outcomes(Struct, frozen=True):
    """The changes of one entry, and what is wrong: the key and the reason."""

    changes: tuple[Change, ...]
    faults: tuple[tuple[str, str], ...]


def outcome_changes(entry: Entry, rule: Rule) -> Outcomes:
    """The outcome and the answer to silence that a club gives a rule."""
    faults = tuple(_faults(entry, rule))
    wrong = {key for key, _ in faults}
    now = {"else": rule.otherwise, "missing": rule.missing}
    changes = tuple(
        Change(Part.OUTCOME, rule.id, key, was, entry.text(key), _direction(was, entry.text(key)), "", 0)
        for key, was in now.items()
        if key in entry.values and key not in wrong
    )
    return Outcomes(changes, faults)


def _direction(was: str, wanted: str) -> Direction:
    return Direction.SAME if was == wanted else Direction.STRICTER


def _faults(entry: Entry, rule: Rule) -> Iterator[tuple[str, str]]:
    for key, now, order in (("else", rule.otherwise, _ELSE), ("missing", rule.missing, _MISSING)):
        if key in entry.values and (why := _fault(rule, key, now, entry.text(key), order)):
            yield key, tr("“{key}” of “{rule}”: {why}", key=key, rule=rule.id, why=why)


def _fault(rule: Rule, key: str, now: str, wanted: str, order: tuple[str, ...]) -> str:
    stricter = [one for one in order[order.index(now) :] if one != "derate" or one == now]
    listed = ", ".join(stricter)
    if wanted not in order:
        return tr(
            "“{wanted}” is not known; {now} stands, and allowed is {listed}.", wanted=wanted, now=now, listed=listed
        )
    if wanted not in stricter:
        return _milder(key, now, wanted, listed)
    if wanted == now or key == "missing":
        return ""
    if now == "derate":
        return tr("What it takes off the strength must stay; change its limit or its setting instead.")
    return _no_retirement(rule) if wanted == "retire" else ""


def _milder(key: str, now: str, wanted: str, listed: str) -> str:
    if key == "missing":
        return tr(
            "What is not known never becomes fit: {now} stands and cannot become {wanted}.", now=now, wanted=wanted
        )
    return tr("{wanted} is no tightening of {now}; allowed is {listed}.", wanted=wanted, now=now, listed=listed)


def _no_retirement(rule: Rule) -> str:
    """Retirement is final and means the whole piece, so it needs a fault of the piece itself."""
    if rule.purposes:
        return tr("It speaks of some uses only, and a retirement means the whole piece; hold is the most.")
    if rule.quantity in _ABOUT_PAPERS:
        return tr("It asks what is known of the piece, which an inspection can mend; hold is the most.")
    return ""

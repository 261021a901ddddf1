"""Whether a rig holds together as a drawing: connected, no ring, each part with as many neighbours as it can bear.

Where forces would not balance, or nobody knows how they share, the rig is refused and never reckoned.
"""

from inspector.gear.fitting import End
from inspector.gear.rig import GROUND
from inspector.language import tr
from inspector.rulebook.rigs.layout import Layout, Part, bad, bar_behind

_BRANCHING = {"block", "line"}


def check_shape(made: Layout) -> None:
    """Refuse a rig whose parts do not hang together, or hang together as none can."""
    _check_connected(made)
    for tag, part in made.parts.items():
        _check_count(made, tag, part)
        if part.body:
            _check_fitted(made, tag, part)
        if part.role in _OF_ROLE:
            _OF_ROLE[part.role](made, tag)
    _check_ends(made)


def _check_connected(made: Layout) -> None:
    seen: set[str] = set()
    waiting = [next(iter(made.parts))]
    while waiting:
        tag = waiting.pop()
        seen.add(tag)
        waiting += [other for other in made.near(tag) if other not in seen]
    apart = [tag for tag in made.parts if tag not in seen]
    if apart:
        raise bad(tr("{tags} hang on nothing else of the rig.", tags=", ".join(apart)))
    if len(made.joined) >= len(made.parts):
        raise bad(tr("The rig closes on itself in a ring."), tr("Only lines that end at a vehicle or an anchor."))


def _check_count(made: Layout, tag: str, part: Part) -> None:
    count = len(made.near(tag))
    if count < 2 and not part.body:
        why = tr("One end of {tag} holds nothing.", tag=tag)
        raise bad(why, tr("Carry the run on to a vehicle or an anchor."))
    most = 3 if part.role == "bridle" else 2
    if count > most and part.role not in _BRANCHING:
        why = tr("{tag} holds {count} parts; nobody knows how they share the pull.", tag=tag, count=count)
        raise bad(why, tr("Only a bridle, a block and a winch line branch."))


def _check_fitted(made: Layout, tag: str, part: Part) -> None:
    """What sits on a vehicle or the ground ends a run: of two lines on one point nobody knows how they load it."""
    near = [made.parts[other] for other in made.near(tag)]
    if part.role == "receiver":
        _check_bar(made, part, [one for one in near if one.role == "bar"])
        near = [one for one in near if one.role != "bar"]
    if len(near) > 1:
        why = tr("{tag} holds {parts} at once.", tag=tag, parts=tr(" and ").join(one.tag for one in near))
        raise bad(why, tr("End the run there, and fix what goes on from there to another point."))


def _check_bar(made: Layout, receiver: Part, named: list[Part]) -> None:
    """The bar that is named must be the one which the register knows there, or another's strength would stand."""
    known = bar_behind(made.facts, receiver.piece) if receiver.piece else ""
    for bar in named:
        if bar.tag != known:
            why = tr("{receiver} does not sit on {bar}.", receiver=receiver.tag, bar=bar.tag)
            raise bad(why, tr("Leave the bar out of the run; the one behind the receiver is put in by itself."))


def _check_line(made: Layout, tag: str) -> None:
    """A line has two ends, over however many blocks it runs: with more, or fewer, its forces do not balance."""
    ends = [other for other in made.near(tag) if made.parts[other].role != "block"]
    if len(ends) != 2:
        why = tr("The line {tag} has two ends, and the runs name {count}.", tag=tag, count=len(ends))
        raise bad(why, tr("Write a run for each block it goes over, and where both its ends are fixed."))


def _check_block(made: Layout, tag: str) -> None:
    """One line runs over a block, and it hangs on one part."""
    over = [other for other in made.near(tag) if made.parts[other].role == "line"]
    if len(over) != 1 or len(made.near(tag)) != 2:
        why = tr("Over the block {tag} runs one line and one part holds it; the runs name otherwise.", tag=tag)
        raise bad(why, tr("Write the line, the block and what holds it, in that order; leave out an idle block."))


def _check_pin(made: Layout, tag: str) -> None:
    if not any(made.parts[other].role == "receiver" for other in made.near(tag)):
        why = tr("The hitch pin {tag} sits in no receiver.", tag=tag)
        raise bad(why, tr("Write receiver, pin and insert in that order."))


def _check_bridle(made: Layout, tag: str) -> None:
    """Both legs of a bridle go to one end of one vehicle."""
    behind = [end for other in made.near(tag) if (end := _fitted_behind(made, other, tag))]
    for at, one in enumerate(behind):
        for other in behind[at + 1 :]:
            ends = {_end_of(one), _end_of(other)} - {End.UNKNOWN}
            if one.body == other.body and len(ends) > 1:
                why = tr(
                    "{one} and {other} sit at two ends of {vehicle}.", one=one.tag, other=other.tag, vehicle=one.body
                )
                raise bad(why, tr("Lead both legs of {tag} to one end of the vehicle.", tag=tag))


def _fitted_behind(made: Layout, tag: str, came_from: str) -> Part | None:
    """The part on a vehicle that a way leads to; none where it branches before."""
    part = made.parts[tag]
    onward = [other for other in made.near(tag) if other != came_from]
    if part.body:
        return part
    return _fitted_behind(made, onward[0], tag) if len(onward) == 1 else None


def _end_of(part: Part) -> End:
    return part.piece.fitted.end if part.piece and part.piece.fitted else End.UNKNOWN


def _check_ends(made: Layout) -> None:
    rig = made.facts.rig
    bodies = {part.body for part in made.parts.values() if part.body}
    pair = [tag for tag in (rig.bogged, rig.pulling) if tag]
    for part in made.parts.values():
        if part.body and part.body not in {*pair, GROUND}:
            why = tr("{tag} sits on {vehicle}, which takes no part.", tag=part.tag, vehicle=part.body)
            raise bad(why, tr("Name that vehicle, or take the part out."))
    for tag in pair:
        if tag not in bodies:
            what = tr("Carry a run on to it, or name the vehicle that takes part.")
            raise bad(tr("Nothing of the rig is fixed to {vehicle}.", vehicle=tag), what)
    if len(bodies) < 2:
        raise bad(tr("The rig has one end only."))


_OF_ROLE = {"line": _check_line, "block": _check_block, "pin": _check_pin, "bridle": _check_bridle}

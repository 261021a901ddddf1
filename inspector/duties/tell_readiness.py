"""A trip's readiness in words, the same at the command line, in the window and on its sheet."""

from collections.abc import Iterator, Sequence

from inspector.drawings.marks import outcome_word
from inspector.duties.before_use import goes, why_not
from inspector.duties.trip_readiness import FallsDue, PartReady, Ready, Turns
from inspector.gear.falls_due import Due
from inspector.gear.trip import Trip, Vehicle
from inspector.language import show_day, tr, tr_n


def days_words(planned: Trip) -> str:
    """ "28 Nov 2026", "28 to 29 Nov 2026", or two days in full where the month turns."""
    first, last = planned.first_on, planned.last_on
    if first == last:
        return show_day(last)
    same_month = (first.year, first.month) == (last.year, last.month)
    return tr("{first} to {last}", first=first.day if same_month else show_day(first), last=show_day(last))


def judged_for_words(ready: Ready) -> str:
    """For which day the pieces are judged."""
    if ready.on == ready.trip.last_on:
        return tr("Every piece is judged for that day, the last of the trip, on what is known today.")
    return tr("The trip is over; every piece is judged for today.")


def answer_words(ready: Ready, lacks: Sequence[str]) -> str:
    """Whether the trip is ready as planned, and if not why; that it is safe is never said. lacks: needs not met."""
    why = list(_against(ready, lacks))
    if why:
        return tr("No, not as planned: {why}.", why="; ".join(why))
    return tr("Yes. {said}", said=tr("Nothing in the register speaks against it."))


def _against(ready: Ready, lacks: Sequence[str]) -> Iterator[str]:
    if not (ready.going or ready.gone or ready.staying):
        yield tr("no piece goes along")
    if ready.staying:
        yield tr_n("{count} piece of the kit stays", "{count} pieces of the kit stay", len(ready.staying))
    if ready.gone:
        yield tr("not at hand: {tags}", tags=", ".join(one.dossier.item.tag for one in ready.gone))
    lent = [one.tag for one in ready.away if not one.lent]
    if lent:
        yield tr("perhaps not at hand: {tags}", tags=", ".join(lent))
    for one in ready.vehicles:
        if one.warning:
            yield one.warning.rstrip(".")
        if not one.parts:
            yield tr("no part is written down for {tag}", tag=one.vehicle.tag)
    parts = [part.judged for one in ready.vehicles for part in one.parts]
    unfit = [one.dossier.item.tag for one in parts if not goes(one) or one.dossier.item.tag in ready.barred]
    if unfit:
        yield tr("on the vehicles may not be used: {tags}", tags=", ".join(unfit))
    if ready.due:
        yield tr("due by then: {tags}", tags=", ".join(dict.fromkeys(one.tag for one in ready.due)))
    if lacks:
        yield tr_n("{count} need is not met", "{count} needs are not met", len(lacks))


def due_words(one: FallsDue) -> str:
    """What falls due, and whether it did already."""
    words = {
        Due.INSPECTION: tr("next inspection"),
        Due.READING: tr("next reading of the wall"),
        Due.WALL: tr("its wall, thinning as before, is down to what must be left"),
        Due.BACK: tr("borrowed, to go back"),
        Due.VERDICT: tr("its verdict holds only until that day"),
    }
    return tr("{what}, overdue", what=words[one.what]) if one.overdue else words[one.what]


def turn_words(one: Turns) -> str:
    """How a verdict of the last day differs from today's, and why."""
    then = outcome_word(one.then.verdict.outcome)
    tag, today = one.then.dossier.item.tag, outcome_word(one.today)
    return tr("{tag}: {today} today, {then} then. {why}", tag=tag, today=today, then=then, why=why_not(one.then))


def mass_words(vehicle: Vehicle) -> str:
    """What a vehicle weighs."""
    weighs = vehicle.mass.as_typed if vehicle.mass else tr("nobody weighed it")
    return tr("GVM {gvm}, mass {mass}", gvm=vehicle.gvm.as_typed, mass=weighs)


def part_words(part: PartReady) -> str:
    """What a part on a vehicle may be used for, or why not, and whether anybody has looked how it was fitted."""
    said = part.judged.explanation.use_line if goes(part.judged) else why_not(part.judged)
    return " ".join(filter(None, (said, _moved_words(part))))


def sits_words(part: PartReady) -> str:
    """Where a part sits, and whether anybody has looked how it was fitted."""
    vehicle = part.fitted.vehicle
    sits = (
        tr("On {vehicle}, {place}.", vehicle=vehicle, place=part.place)
        if part.place
        else tr("On {vehicle}, at a place that nobody wrote down.", vehicle=vehicle)
    )
    return " ".join(filter(None, (sits, _moved_words(part))))


def _moved_words(part: PartReady) -> str:
    if part.moved_on is None:
        return ""
    return tr("Fitted there on {day}, and no competent person has inspected it since.", day=show_day(part.moved_on))

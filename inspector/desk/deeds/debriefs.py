"""A trip told afterwards: which rigs were pulled how often and how hard, and what was pulled with apart from rigs."""

from collections.abc import Iterator
from datetime import date

from msgspec import Struct

from inspector.desk.deeds.common import by, note, on_day
from inspector.desk.deeds.words import events, yes_or_no
from inspector.desk.form.asked import Asked, Count, Day, Files, Line, Number, OneOf, Part, Tags, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.drawings.marks import outcome_word
from inspector.duties.debrief import debrief
from inspector.duties.debrief_files import read_debrief
from inspector.duties.form_facts import FormFacts
from inspector.duties.named_files import read_bytes
from inspector.duties.office import Office
from inspector.duties.record_use import record_use
from inspector.duties.typed_tables import decoded
from inspector.duties.work_rigs import shares_of
from inspector.gear.debrief import Debriefed, NewDebrief, RigUsed
from inspector.gear.judged import Judged
from inspector.gear.rig import KeptRig
from inspector.gear.trip import Trip
from inspector.gear.use import Event, NewUse
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.units import Dimension


class Telling(Struct, frozen=True):
    """A trip that is over or under way, and the kept rigs that may have been used on it."""

    trip: Trip
    rigs: tuple[KeptRig, ...]


def asked_of(trip: Trip, rigs: tuple[KeptRig, ...]) -> Telling:
    """The rigs kept for this trip, then those kept for none whose vehicles go along."""
    own = [one for one in rigs if one.rig.trip == trip.ref]
    fits = [one for one in rigs if not one.rig.trip and {one.rig.bogged, one.rig.pulling} - {""} <= {*trip.vehicles}]
    return Telling(trip, (*own, *fits))


def tell(asked: Telling) -> Deed[Telling]:
    """Ask of each rig what it went through; silence about a rig that was pulled is refused."""
    trip = asked.trip
    return Deed(
        "debrief", tr("Tell how it went"), tr("How {ref} {name} went", ref=trip.ref, name=trip.name),
        tr("Each pull is written down for every piece of its rig, both ends and dampers included. A jerk, a near miss "
           "or more pull than a piece may bear holds it until it is inspected. A rig without pulls was not used."),
        _fields, _told, tr("Keep it"),
    )  # fmt: skip


def from_file() -> Deed[None]:
    """A trip told in a file, its rigs by reference or written out in full."""

    def do(office: Office, about: None, given: Values) -> Done:
        (file,) = given.files("file")
        told = read_debrief(office, decoded(read_bytes(file), file.name))
        return _done(told, debrief(office, told, shares_of(office)), ())

    return Deed(
        "debrief file", tr("Told in a file"), tr("Read how a trip went"),
        tr("A text file that names the trip, the day and each rig used, by its reference or written out in full."),
        lambda facts, about: (
            Files(key="file", label=tr("File"), needed=True, one=True, hint=tr("Choose it, or drop it here.")),
        ),
        do, tr("Keep it"),
    )  # fmt: skip


def _fields(facts: FormFacts, about: Telling) -> tuple[Asked | Part, ...]:
    day = min(about.trip.last_on, facts.today)
    none_kept = tr("No rig is kept that fits this trip: keep one on the page of the rig, or tell the pieces below.")
    none = Tick(key="none", label=tr("No rig was pulled on this trip"), names=(tr("used"),),
                hint="" if about.rigs else none_kept)  # fmt: skip
    return (
        on_day(facts.today, tr("Told on")),
        none,
        *(Part(f"{one.ref}  {one.rig.name}", tuple(_of_rig(one, day))) for one in about.rigs),
        Part(tr("Pulled with apart from these rigs"), (
            Tags(key="apart", label=tr("Pieces"), names=(tr("tag"),),
                 hint=tr("Scan or type their tags, with blanks between them.")),
            Count(key="apart pulls", label=tr("Pulls of each"), least=1),
            OneOf(key="apart event", label=tr("What happened"), choices=events()),
            Day(key="apart on", label=tr("On"), stands=day),
        )),
        Part("", (note(), by(facts, tr("told by")))),
    )  # fmt: skip


def _of_rig(one: KeptRig, day: date) -> Iterator[Asked]:
    """Each label names the rig for whoever hears it."""
    ref = one.ref
    yield Count(key=f"{ref} pulls", label=tr("{ref}: pulls", ref=ref), least=1, hint=tr("Empty: it was not used."))
    yield Day(
        key=f"{ref} on", label=tr("{ref}: on", ref=ref), stands=day, names=(tr("day of {rig}", rig=one.rig.name),)
    )
    yield Number(key=f"{ref} hardest", label=tr("{ref}: hardest pull", ref=ref), dimension=Dimension.FORCE,
                 example=tr("for example 25 kN"), hint=tr("Read or reckoned; empty where nobody knows."))  # fmt: skip
    yield OneOf(key=f"{ref} jerked", label=tr("{ref}: did it jerk?", ref=ref), choices=yes_or_no(),
                hint=tr("A jerk, a stall, or more speed than planned."))  # fmt: skip
    yield OneOf(key=f"{ref} missed", label=tr("{ref}: near miss?", ref=ref), choices=yes_or_no())
    yield Line(key=f"{ref} near_miss", label=tr("{ref}: what nearly happened", ref=ref))


def _told(office: Office, about: Telling, given: Values) -> Done:
    used = tuple(_used(office, one, given) for one in about.rigs if given.number(f"{one.ref} pulls"))
    apart = given.tags("apart")
    _check_said(used, apart, given)
    day = given.day("on") or office.today
    told = NewDebrief(about.trip.ref, day, used, given.one("by", str), given.text("note"))
    with office.book.together():  # what was pulled apart from rigs is kept with it, or nothing
        kept = debrief(office, told, shares_of(office))
        alone = tuple(_alone(office, tag, about.trip, given) for tag in apart)
    return _done(told, kept, alone)


def _used(office: Office, one: KeptRig, given: Values) -> RigUsed:
    """A rig as it was used; what was not said of it is asked for."""
    ref = one.ref
    jerked, missed = given.said(f"{ref} jerked"), given.said(f"{ref} missed")
    near_miss, hardest = given.text(f"{ref} near_miss"), given.figure(f"{ref} hardest")
    if hardest is not None and hardest.si <= 0:
        why = tr("{figure} is no pull.", figure=hardest.as_typed)
        raise Refused(f"{ref} hardest", why, tr("Write the hardest pull, or leave it empty."))
    if jerked is None:
        raise Refused(f"{ref} jerked", tr("Nobody said it."), tr("Ask who pulled; silence would read as no."))
    if missed is None:
        raise Refused(f"{ref} missed", tr("Nobody said it."), tr("Ask who pulled; silence would read as no."))
    if missed is not bool(near_miss):
        why = tr("A near miss is told in words.") if missed else tr("It says that there was no near miss.")
        raise Refused(f"{ref} near_miss", why, tr("Write what nearly happened, or say that nothing did."))
    pulls, day = given.number(f"{ref} pulls") or 0, given.day(f"{ref} on") or office.today
    return RigUsed(one.rig, pulls, day, hardest, jerked=jerked, near_miss=near_miss)


def _check_said(used: tuple[RigUsed, ...], apart: tuple[str, ...], given: Values) -> None:
    """That nothing was pulled is said, never assumed."""
    if used and given.tick("none"):
        raise Refused("none", tr("Below stand rigs with pulls."), tr("Take this tick away, or empty their pulls."))
    if not used and not given.tick("none"):
        what = tr("Write the pulls of each rig that was used, or tick this.")
        raise Refused("none", tr("Nothing is told of any rig."), what)
    if apart and not given.number("apart pulls"):
        raise Refused("apart pulls", tr("How often they were pulled was not said."), tr("Write the pulls of each."))


def _alone(office: Office, tag: str, trip: Trip, given: Values) -> Judged:
    """The pulls of one piece that stood in no rig."""
    words = tr("Trip {ref}, apart from a rig.", ref=trip.ref)
    use = NewUse(given.day("apart on") or office.today, given.number("apart pulls") or 0,
                 given.one("apart event", Event), given.one("by", str) or office.officer.id, words)  # fmt: skip
    try:
        return record_use(office, tag, use)
    except Refused as refusal:
        field = "apart on" if refusal.field == tr("day") else refusal.field
        raise Refused(field, refusal.why, refusal.what_to_do) from refusal


def _done(told: NewDebrief, kept: Debriefed, alone: tuple[Judged, ...]) -> Done:
    lines = [tr("{tag}: {outcome}. {plain}", tag=one.dossier.item.tag, outcome=outcome_word(one.verdict.outcome),
                plain=one.explanation.plain) for one in (*kept.pieces, *alone)]  # fmt: skip
    lines += [tr("{tag} was made unusable since; its pulls stand in the debrief alone.", tag=tag)
              for tag in kept.destroyed]  # fmt: skip
    head = tr("Trip {ref} was told on {day}.", ref=told.trip, day=show_day(told.on))
    return Done(head, "\n".join(lines))

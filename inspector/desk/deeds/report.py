"""Report the bad day: few lines first, since whoever writes them may be shaken; all else under headings, or later."""

from msgspec import Struct

from inspector.desk.deeds.common import by, on_day
from inspector.desk.deeds.words import Choices
from inspector.desk.form.asked import Asked, Files, Line, OneOf, Part, Prose, Tags
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.form_facts import FormFacts
from inspector.duties.incident_checks import typed_distances
from inspector.duties.office import Office
from inspector.duties.report_incident import Reported, report_incident
from inspector.duties.rig_files import rig_of_file
from inspector.gear.incident import Gravity, NewIncident
from inspector.gear.rig import KeptRig, Rig
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused


class ToReport(Struct, frozen=True):
    """What the form offers: the rigs that are kept."""

    rigs: tuple[KeptRig, ...] = ()


def accident(offered: ToReport) -> Deed[ToReport]:
    """Somebody was hurt, or something broke or flew."""

    def do(office: Office, about: ToReport, given: Values) -> Done:
        kept = report_incident(office, _told(office, about, given, Gravity.ACCIDENT))
        pieces = tr_n("{count} piece", "{count} pieces", len(kept.pieces))
        cars = tr_n("{count} vehicle", "{count} vehicles", len(kept.incident.facts.vehicles))
        head = tr("{ref} is kept: {pieces} and {cars} stay as they were found.", ref=kept.incident.ref, pieces=pieces,
                  cars=cars)  # fmt: skip
        return Done(head, _after(kept))

    return Deed(
        "report accident", tr("Report an accident"), tr("Report an accident"),
        tr("First see to people; this can wait, and what is typed is kept. Once it is reported, every piece and "
           "vehicle that was there, with all that is fitted to it, is kept as it was found: no cleaning, no repair, no "
           "use. Two competent persons release each later."),
        lambda facts, about: (*_first(facts, tr("Also whether somebody was hurt, and what broke or flew.")),
                              *_there(about, broke=True), *_more(facts)),
        do, tr("Report the accident"),
    )  # fmt: skip


def near_miss(offered: ToReport) -> Deed[ToReport]:
    """Nothing broke or flew and nobody was hurt, but it was close."""

    def do(office: Office, about: ToReport, given: Values) -> Done:
        kept = report_incident(office, _told(office, about, given, Gravity.NEAR_MISS))
        said = tr_n("{ref} is kept: {count} piece that bore the pull is held.",
                    "{ref} is kept: {count} pieces that bore the pull are held.",
                    len(kept.pieces), ref=kept.incident.ref)  # fmt: skip
        return Done(said, _after(kept))

    return Deed(
        "report near miss", tr("Report a near miss"), tr("Report a near miss"),
        tr("For a day on which nothing broke or flew and nobody was hurt, but it was close. What bore the pull counts "
           "as overloaded and is held until a competent person has inspected it. Nothing is kept as evidence: if "
           "anything broke or anybody was hurt, report an accident."),
        lambda facts, about: (*_first(facts, ""), *_there(about, broke=False), *_more(facts)),
        do, tr("Report the near miss"),
    )  # fmt: skip


def _first(facts: FormFacts, hint: str) -> tuple[Asked, ...]:
    """What is needed."""
    return (
        Prose(key="what", label=tr("What happened"), needed=True, names=(tr("what happened"),),
              hint=f"{tr('In your own words.')} {hint}".strip()),
        Line(key="place", label=tr("Where"), needed=True, names=(tr("place"),),
             hint=tr("So that somebody can go there.")),
        on_day(facts.today, tr("Day it happened")),
    )  # fmt: skip


def _there(offered: ToReport, *, broke: bool) -> tuple[Part, ...]:
    """The rig, further pieces and the vehicles; one of them is needed."""
    rigs: Choices = [(tr("none of these, or nobody knows"), None)]
    rigs += [(tr("{ref}: {name}", ref=one.ref, name=one.rig.name), one) for one in offered.rigs]
    fields: list[Asked] = [
        OneOf(key="rig", label=tr("Rig"), choices=rigs, names=(tr("pieces"), tr("rig")),
              hint=tr("As it was rigged, if it is kept in the register; its pieces and vehicles come with it.")),
        Tags(key="pieces", label=tr("Pieces"), names=(tr("tag"),),
             hint=tr("Tags of pieces that were there, with blanks between them.")),
        Tags(key="vehicles", label=tr("Vehicles"), names=(tr("vehicle"),),
             hint=tr("Tags of vehicles that were there; all parts fitted to them come with them.")),
    ]  # fmt: skip
    if broke:
        fields.insert(2, Tags(key="broken", label=tr("What broke or let go"), names=(tr("broke"),),
                              hint=tr("Tags, also of pieces named above.")))  # fmt: skip
    return (Part(tr("What was there: a rig, a piece or a vehicle"), tuple(fields)),)


def _more(facts: FormFacts) -> tuple[Part, ...]:
    """What can wait."""
    trips: Choices = [(tr("no trip"), "")]
    trips += [(tr("{day}: {name}", day=show_day(one.first_on), name=one.name), one.ref) for one in facts.trips]
    return (
        Part(tr("Can wait: people, trip, distances"), (
            Prose(key="witnesses", label=tr("Witnesses"), names=(tr("witness"),),
                  hint=tr("Names as stated, one to a line.")),
            OneOf(key="trip", label=tr("Trip"), choices=trips, names=(tr("trip"),)),
            Prose(key="distances", label=tr("Distances"), names=(tr("distance"),),
                  hint=tr("One to a line: from; to; how far. For example: hook of V-01; bystander; 12 m")),
            Files(key="rig_file", label=tr("Rig as a file"), one=True, names=(tr("rig file"),), more=True,
                  hint=tr("Where the rig is not kept in the register but written in a file.")),
            by(facts, tr("reported by")),
        )),
    )  # fmt: skip


def _told(office: Office, about: ToReport, given: Values, gravity: Gravity) -> NewIncident:
    broken = given.tags("broken") if gravity is Gravity.ACCIDENT else ()
    return NewIncident(
        on=given.day("on") or office.today,
        gravity=gravity,
        place=given.text("place"),
        what=given.text("what"),
        pieces=(*given.tags("pieces"), *broken),
        vehicles=given.tags("vehicles"),
        witnesses=tuple(one.strip() for one in given.text("witnesses").splitlines() if one.strip()),
        rig=_rig(office, given),
        distances=typed_distances(given.text("distances"), office.decimal),
        trip=given.one("trip", str),
        by=given.one("by", str),
        broken=broken,
    )


def _rig(office: Office, given: Values) -> Rig | None:
    """The kept rig that was chosen, or that of a file; refused where both are named."""
    kept, files = given.one("rig", object), given.files("rig_file")
    if files and kept is not None:
        why = tr("A kept rig is chosen and a file is named.")
        raise Refused(tr("rig file"), why, tr("Take the one that says how it was rigged on that day."))
    if files:
        return rig_of_file(files[0], office.decimal)
    return kept.rig if isinstance(kept, KeptRig) else None


def _after(kept: Reported) -> str:
    """What could not be kept, and what to do next."""
    gone = [f"{tag}: {why}" for tag, why in kept.incident.facts.gone]
    next_thing = tr("Statements, who holds each piece and photos can be added at any time.")
    return "\n".join([*gone, next_thing])

"""A trip: planned, changed, its kit, as a file for another register."""

from collections.abc import Callable, Iterable
from datetime import date

from msgspec.structs import replace

from inspector.desk.deeds.common import people_line, why
from inspector.desk.deeds.rigs import file_name
from inspector.desk.form.asked import Asked, Day, Files, Line, OneOf, Part, Prose, SomeOf, Tags
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.exchange_trip import export_trip, import_trip
from inspector.duties.form_facts import FormFacts
from inspector.duties.named_files import read_bytes, write_new
from inspector.duties.office import Office
from inspector.duties.overtaken import typed_anew
from inspector.duties.plan_rides import NOWHERE, plan_rides
from inspector.duties.plan_trip import change_trip, plan_trip, retired_in_kit, trip_fields
from inspector.gear.trip import Ground, Trip, ground_words
from inspector.language import tr, tr_n
from inspector.refused import Refused


def plan() -> Deed[None]:
    """A trip that the register does not know yet."""

    def do(office: Office, about: None, given: Values) -> Done:
        first = given.day("first_on")
        if first is None:
            raise TypeError("the form asks for it")
        kept = plan_trip(office, _planned(given, first))
        return Done(tr("{name} is planned as {ref}.", name=kept.name, ref=kept.ref), _retired(office, kept))

    return Deed(
        "plan trip", tr("Plan a trip"), tr("Plan a trip"),
        tr("Its kit may stay empty: once it is planned, the page of the trip proposes one by what its vehicles need."),
        lambda facts, about: (
            Line(key="ref", label=tr("Reference"), needed=True, example=tr("for example T-07"),
                 hint=tr("Short, and for good: sheets and rigs name the trip by it.")),
            *_plan_fields(facts, None), Part(tr("What goes along"), (_kit(()),)),
        ),
        do, tr("Plan it"),
    )  # fmt: skip


def change(trip: Trip) -> Deed[Trip]:
    """Another day, another place, somebody else."""

    def do(office: Office, about: Trip, given: Values) -> Done:
        kept = change_trip(office, about.ref, _edit(about, _planned(given, about.first_on)), given.text("why"))
        return Done(tr("The plan of {name} is changed.", name=kept.name), _retired(office, kept))

    return Deed(
        "change trip", tr("Change the plan"), tr("Change the plan of {ref} {name}", ref=trip.ref, name=trip.name),
        tr("The plan before it stays in the trip's history. Its kit has a form of its own."),
        lambda facts, about: (*_plan_fields(facts, about), why()),
        do, tr("Change it"),
    )  # fmt: skip


def change_kit(trip: Trip) -> Deed[Trip]:
    """Pieces come along or stay at home."""

    def do(office: Office, about: Trip, given: Values) -> Done:
        wanted = given.tags("kit")

        def edited(stands: Trip) -> Trip:
            return replace(stands, kit=_merged(stands.kit, about.kit, wanted))

        kept = change_trip(office, about.ref, edited, given.text("why"))
        return Done(tr("{count} pieces are in the kit now.", count=len(kept.kit)), _retired(office, kept))

    return Deed(
        "change kit", tr("Change the kit"), tr("The kit of {ref} {name}", ref=trip.ref, name=trip.name),
        tr("Scan what comes along as well; take out what stays at home. The kit before it stays in the trip's "
           "history."),
        lambda facts, about: (_kit(about.kit), why()),
        do, tr("Make this the kit"),
    )  # fmt: skip


def rides(trip: Trip) -> Deed[Trip]:
    """Which piece of the kit rides on which vehicle."""

    def do(office: Office, about: Trip, given: Values) -> Done:
        kept = plan_rides(office, about.ref, _rides(about, given), given.text("why"), seen=about)
        left = sum(not kept.rides_on(tag) for tag in kept.kit)
        said = tr_n("One piece of the kit rides on no vehicle by plan.",
                    "{count} pieces of the kit ride on no vehicle by plan.", left) if left else ""  # fmt: skip
        return Done(tr("It is planned what rides where on {name}.", name=kept.name), said)

    return Deed(
        "plan rides", tr("Plan what rides where"),
        tr("What rides where on {ref} {name}", ref=trip.ref, name=trip.name),
        tr("It stands on the sheets: each vehicle can have its own. A part that sits on a vehicle goes with it and is "
           "not written here."),
        lambda facts, about: (*(_riding(facts, about, tag) for tag in about.vehicles), why()),
        do, tr("Plan it so"),
    )  # fmt: skip


def _riding(facts: FormFacts, trip: Trip, vehicle: str) -> Asked:
    name = next((one.name for one in facts.vehicles if one.tag == vehicle), "")
    stands = tuple(one.tag for one in trip.rides if one.vehicle == vehicle)
    return Tags(key=f"on_{vehicle}", label=f"{vehicle} {name}", stands=stands,
                hint=tr("Scan or type the tags of what rides on it, with blanks between them."))  # fmt: skip


def _rides(shown: Trip, given: Values) -> dict[str, str]:
    """What was planned anew, by tag: a piece that stands in no field any more rides nowhere by plan."""
    wanted: dict[str, str] = {}
    for vehicle in shown.vehicles:
        for tag in given.tags(f"on_{vehicle}"):
            key = next((one for one in shown.kit if one.casefold() == tag.casefold()), "")
            if not key or wanted.get(key, vehicle) != vehicle:
                raise _misplaced(f"on_{vehicle}", tag, wanted.get(key, ""))
            wanted[key] = vehicle
    before = {one.tag: one.vehicle for one in shown.rides}
    return {tag: wanted.get(tag, NOWHERE) for tag in shown.kit if wanted.get(tag) != before.get(tag)}


def _misplaced(key: str, tag: str, other: str) -> Refused:
    if other:
        why = tr("“{tag}” stands at {vehicle} as well.", tag=tag, vehicle=other)
        return Refused(key, why, tr("Leave one of the two out."))
    why = tr("“{tag}” is not in the kit of this trip.", tag=tag)
    return Refused(key, why, tr("Take it into the kit first, or look at the label again."))


def take_in() -> Deed[None]:
    """A trip out of a file of another register."""

    def do(office: Office, about: None, given: Values) -> Done:
        (file,) = given.files("file")
        kept = import_trip(office, read_bytes(file), file.name, given.text("as_ref"))
        return Done(tr("{name} is planned as {ref}.", name=kept.name, ref=kept.ref), _retired(office, kept))

    return Deed(
        "import trip", tr("Read a trip from a file"), tr("Read a trip from a file"),
        tr("The text file that another register wrote. Its vehicles, people and pieces must stand in this one."),
        lambda facts, about: (
            Files(key="file", label=tr("File"), needed=True, one=True, hint=tr("Choose it, or drop it here.")),
            Line(key="as_ref", label=tr("Another reference"), names=(tr("reference"),),
                 hint=tr("Where the reference in the file is taken already.")),
        ),
        do, tr("Read it in"),
    )  # fmt: skip


def write_out(trip: Trip) -> Deed[Trip]:
    """The trip as a text file for another register."""

    def do(office: Office, about: Trip, given: Values) -> Done:
        (folder,) = given.files("folder")
        place = folder / given.text("name")
        write_new(place, export_trip(office, about.ref))
        return Done(tr("{name} is written out.", name=about.name), str(place))

    return Deed(
        "export trip", tr("Write it into a file"), tr("Write {ref} {name} into a file", ref=trip.ref, name=trip.name),
        tr("A text file that another register reads in. A file that is there already stays as it is."),
        lambda facts, about: (
            Files(key="folder", label=tr("Folder"), needed=True, folder=True),
            Line(key="name", label=tr("Name of the file"), needed=True, stands=file_name(about.ref),
                 names=(tr("file"),)),
        ),
        do, tr("Write it"),
    )  # fmt: skip


def _planned(given: Values, first: date) -> Trip:
    """The plan as it was typed, without id; a form that does not ask for reference or kit leaves them empty."""
    begins = given.day("first_on") or first
    return Trip(
        "", given.text("ref") if given.has("ref") else "", given.text("name"), given.text("place"),
        given.one("ground", Ground), begins, given.day("last_on") or begins, given.text("leader"),
        given.some("vehicles"), given.tags("kit") if given.has("kit") else (), given.some("people"), given.text("note"),
    )  # fmt: skip


def _edit(shown: Trip, wanted: Trip) -> Callable[[Trip], Trip]:
    """The change of what was typed anew alone: what somebody else changed meanwhile stays."""
    single = typed_anew(shown, wanted, trip_fields())

    def edited(stands: Trip) -> Trip:
        people = _merged(stands.people, shown.people, wanted.people)
        vehicles = _merged(stands.vehicles, shown.vehicles, wanted.vehicles)
        return replace(single(stands), people=people, vehicles=vehicles)

    return edited


def _merged(stands: Iterable[str], shown: Iterable[str], wanted: Iterable[str]) -> tuple[str, ...]:
    """What stands now, without what was taken out of what was shown, with what came into it."""
    before, after = {one.casefold() for one in shown}, {one.casefold() for one in wanted}
    kept = tuple(one for one in stands if one.casefold() not in before - after)
    known = {one.casefold() for one in kept}
    return (*kept, *(one for one in wanted if one.casefold() not in before and one.casefold() not in known))


def _retired(office: Office, kept: Trip) -> str:
    """Which pieces of its kit must stay at home for good."""
    tags = retired_in_kit(office, kept)
    return "\n".join(tr("{tag} is retired: it stands in the kit and must stay at home.", tag=tag) for tag in tags)


def _plan_fields(facts: FormFacts, stands: Trip | None) -> tuple[Asked, ...]:
    """All of a plan but its reference and its kit."""
    leader = people_line(facts, "leader", tr("Leader"), names=(tr("leader"),))
    grounds: list[tuple[str, object]] = [] if stands else [(tr("not said yet"), None)]
    grounds += [(ground_words(one), one) for one in Ground]
    return (
        Line(key="name", label=tr("Name"), needed=True, stands=stands.name if stands else ""),
        Line(key="place", label=tr("Place"), stands=stands.place if stands else ""),
        OneOf(key="ground", label=tr("What it drives on"), stands=stands.ground if stands else None, needed=True,
              choices=grounds, hint=tr("A rig reckons with it where nobody says better.")),
        Day(key="first_on", label=tr("First day"), needed=True, stands=stands.first_on if stands else None),
        Day(key="last_on", label=tr("Last day"), stands=stands.last_on if stands else None,
            hint=tr("The first day, where none is written.")),
        replace(leader, stands=stands.leader if stands else ""),
        SomeOf(key="people", label=tr("Who goes"), choices=[(one.name, one.id) for one in facts.people],
               stands=stands.people if stands else ()),
        SomeOf(key="vehicles", label=tr("Vehicles"), choices=[(f"{one.tag} {one.name}", one.tag)
                                                              for one in facts.vehicles],
               stands=stands.vehicles if stands else ()),
        Prose(key="note", label=tr("Note"), stands=stands.note if stands else ""),
    )  # fmt: skip


def _kit(stands: tuple[str, ...]) -> Asked:
    return Tags(key="kit", label=tr("Kit"), stands=stands, names=(tr("kit"), tr("trip")),
                hint=tr("Scan or type the tags of the pieces that go, with blanks between them."))  # fmt: skip

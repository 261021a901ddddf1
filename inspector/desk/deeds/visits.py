"""A member's or another club's piece comes along on one trip."""

from inspector.desk.deeds.booking import maker_fields, sizes
from inspector.desk.deeds.common import note, people_line, told
from inspector.desk.deeds.labels import rating_fields, rating_in
from inspector.desk.deeds.work import sizes_in
from inspector.desk.form.asked import Day, Line, Part
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.office import Office
from inspector.duties.visit import visit as take_along
from inspector.duties.visit import visit_again
from inspector.gear.item import NewItem
from inspector.gear.kind import Basis, Kind
from inspector.gear.trip import Trip
from inspector.language import tr


def visit(trip: Trip, kind: Kind) -> Deed[Trip]:
    """A piece of this kind that the register does not know yet."""

    def do(office: Office, about: Trip, given: Values) -> Done:
        judged = take_along(office, about.ref, _guest(office, kind, given))
        tag = judged.dossier.item.tag
        return told(tr("It came along as {tag}; write the tag on it.", tag=tag), judged)

    return Deed(
        f"visit {kind.key}", kind.name,
        tr("{kind}: comes along on {ref} {name}", kind=kind.name, ref=trip.ref, name=trip.name),
        tr("It is judged as any piece, stands in the kit of this trip at once, and goes on no other one."),
        lambda facts, about: (
            people_line(facts, "owner", tr("Whose it is"), needed=True, names=(tr("owner"),),
                        hint=tr("A member, or another club.")),
            Line(key="tag", label=tr("Tag"), hint=tr("One is proposed where none is written.")),
            Part(tr("What is marked on it"), (
                *rating_fields(memory=True, basis=kind.rated_by[0] if kind.rated_by else Basis.UNRATED),
                *maker_fields(),
                Day(key="made_on", label=tr("Made on"), names=(tr("made on"),),
                    hint=tr("From its label; empty where nobody knows.")),
            )),
            Part(tr("Its sizes as new"), sizes(kind)),
            Part("", (note(),)),
        ),
        do, tr("Take it along"),
    )  # fmt: skip


def again(trip: Trip) -> Deed[Trip]:
    """One that came along before."""

    def do(office: Office, about: Trip, given: Values) -> Done:
        judged = visit_again(office, about.ref, given.text("tag"))
        return told(tr("{tag} comes along again.", tag=judged.dossier.item.tag), judged)

    return Deed(
        "visit again", tr("One that came along before"),
        tr("A piece comes along again on {ref} {name}", ref=trip.ref, name=trip.name),
        tr("It keeps its tag and its history. What it went through since, nobody here knows: it is held until a "
           "competent person has inspected it."),
        lambda facts, about: (Line(key="tag", label=tr("Its tag"), needed=True, names=(tr("tag"), tr("trip"))),),
        do, tr("Take it along"),
    )  # fmt: skip


def _guest(office: Office, kind: Kind, given: Values) -> NewItem:
    return NewItem(
        given.text("tag"),
        kind.key,
        rating_in(office, given),
        maker_mark=given.text("maker_mark"),
        serial=given.text("serial"),
        material=given.text("material"),
        sizes=sizes_in(kind, given),
        owner=given.text("owner"),
        made_on=given.day("made_on"),
        note=given.text("note"),
    )

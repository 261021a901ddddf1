"""A vehicle of the register: entered, changed; a part fitted to it or taken off."""

from msgspec.structs import replace

from inspector.desk.deeds.common import by, note, on_day, people_line, why
from inspector.desk.deeds.fitting import fitted_there, place_fields, taken_off
from inspector.desk.form.asked import Asked, Line, Number, OneOf, Prose
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.drawings.marks import outcome_word
from inspector.duties.form_facts import FormFacts
from inspector.duties.keep_vehicles import add_vehicle, change_vehicle, overload_words, vehicle_fields
from inspector.duties.office import Office
from inspector.duties.overtaken import typed_anew
from inspector.duties.vehicle_record import Part, VehicleRecord
from inspector.gear.trip import Vehicle
from inspector.language import tr
from inspector.units import Dimension, Figure

_WORDS = ("name", "owner", "note")
_FIGURES = ("gvm", "mass", "front_spacing", "rear_spacing")


def add() -> Deed[None]:
    """A vehicle that the register does not know yet."""

    def do(office: Office, about: None, given: Values) -> Done:
        gvm = given.figure("gvm")
        if gvm is None:
            raise TypeError("the form asks for it")
        kept = add_vehicle(
            office, given.text("tag"), given.text("name"), given.text("owner"), gvm, given.figure("mass"),
            note=given.text("note"), front_spacing=given.figure("front_spacing"),
            rear_spacing=given.figure("rear_spacing"),
        )  # fmt: skip
        return Done(tr("{tag} {name} stands in the register.", tag=kept.tag, name=kept.name), overload_words(kept))

    return Deed(
        "add vehicle", tr("Enter a vehicle"), tr("Enter a vehicle"),
        tr("The club's, a member's, a guest's: whatever may pull or be pulled. What nobody weighed or measured stays "
           "empty, and a rig reckons with the worst then."),
        lambda facts, about: (
            Line(key="tag", label=tr("Tag"), needed=True, example=tr("for example V-11"),
                 hint=tr("As it is written on its label. It keeps it for good.")),
            *_facts(facts, None), Prose(key="note", label=tr("Note")),
        ),
        do, tr("Enter it"),
    )  # fmt: skip


def change(vehicle: Vehicle) -> Deed[Vehicle]:
    """Weighed anew, measured, sold, converted."""

    def do(office: Office, about: Vehicle, given: Values) -> Done:
        new: dict[str, object] = {key: given.text(key) for key in _WORDS if given.text(key) != getattr(about, key)}
        new |= {key: given.figure(key) for key in _FIGURES if _differs(given.figure(key), getattr(about, key))}
        wanted = replace(about, **new)
        kept = change_vehicle(office, about.tag, typed_anew(about, wanted, vehicle_fields()), given.text("why"),
                              on=given.day("on"), by=given.one("by", str))  # fmt: skip
        return Done(tr("What changed of {tag} is written down.", tag=kept.tag), overload_words(kept))

    return Deed(
        "change vehicle", tr("Change it"), tr("What changed of {tag} {name}", tag=vehicle.tag, name=vehicle.name),
        tr("Write what holds from now on; what stood before stays in its history. Empty a mass or a spacing that "
           "nobody knows any more."),
        lambda facts, about: (
            *_facts(facts, about),
            Prose(key="note", label=tr("Note"), stands=about.note),
            why(needed=True, hint=tr("For example: weighed with the canopy.")),
            on_day(facts.today, tr("From this day on")), by(facts),
        ),
        do, tr("Write it down"),
    )  # fmt: skip


def fit_onto(vehicle: Vehicle) -> Deed[Vehicle]:
    """A loose piece comes onto this vehicle."""

    def do(office: Office, about: Vehicle, given: Values) -> Done:
        return fitted_there(office, given.text("piece"), about.tag, given)

    return Deed(
        "fit onto vehicle", tr("Fit a part"),
        tr("A part is fitted to {tag} {name}", tag=vehicle.tag, name=vehicle.name),
        tr("From this day on it sits there, and a rig on this vehicle reckons with it. A recovery point, a tube or a "
           "winch is held until a competent person has seen how it is fastened there."),
        lambda facts, about: (
            Line(key="piece", label=tr("Tag of the part"), needed=True, names=(tr("tag"), tr("piece")),
                 hint=tr("Scan it, or type what is written on it.")),
            *place_fields(), on_day(facts.today), note(), by(facts, tr("fitted by")),
        ),
        do, tr("Fit it"),
    )  # fmt: skip


def take_off_of(record: VehicleRecord) -> Deed[VehicleRecord]:
    """A part comes off this vehicle."""

    def do(office: Office, about: VehicleRecord, given: Values) -> Done:
        return taken_off(office, given.one("piece", str), given)

    vehicle = record.vehicle
    return Deed(
        "take off vehicle", tr("Take a part off"),
        tr("A part is taken off {tag} {name}", tag=vehicle.tag, name=vehicle.name),
        tr("Say in the note why, and where it lies."),
        lambda facts, about: (
            OneOf(key="piece", label=tr("Part"), needed=True, names=(tr("tag"),),
                  choices=[(tr("not said yet"), ""), *((_part_words(one), one.row.tag) for one in about.parts)]),
            on_day(facts.today), note(), by(facts, tr("fitted by")),
        ),
        do, tr("Take it off"),
        fits=lambda about: "" if about.parts else tr("No part is written down for it."),
    )  # fmt: skip


def _part_words(part: Part) -> str:
    outcome = part.row.outcome
    said = (part.row.tag, part.place, part.row.kind_name, outcome_word(outcome) if outcome else "")
    return " · ".join(one for one in said if one)


def _differs(given: Figure | None, stands: Figure | None) -> bool:
    """Whether another figure was typed; one that nobody touched is not read anew."""
    return (given.as_typed if given else None) != (stands.as_typed if stands else None)


def _facts(facts: FormFacts, stands: Vehicle | None) -> tuple[Asked, ...]:
    """Name, owner, masses and spacings; stands: what the register says now."""
    owner = people_line(facts, "owner", tr("Owner"), names=(tr("owner"),))
    apart = tr("Between the middles of its two recovery points at that end.")
    length = tr("for example 0.85 m")
    return (
        Line(key="name", label=tr("What it is"), needed=True, names=(tr("name"),), stands=stands.name if stands else "",
             example=tr("for example medium wagon, grey")),
        replace(owner, stands=stands.owner if stands else ""),
        Number(key="gvm", label=tr("GVM"), dimension=Dimension.MASS, needed=True, stands=_typed(stands, "gvm"),
               example=tr("for example 2700 kg"), hint=tr("Its greatest laden mass, as on its plate.")),
        Number(key="mass", label=tr("Mass as weighed"), dimension=Dimension.MASS, names=(tr("mass"),),
               stands=_typed(stands, "mass"), example=tr("for example 2190 kg"),
               hint=tr("As it drives on the day, from a weighbridge.")),
        Number(key="front_spacing", label=tr("Front points apart"), dimension=Dimension.LENGTH, example=length,
               names=(tr("front spacing"),), stands=_typed(stands, "front_spacing"), hint=apart),
        Number(key="rear_spacing", label=tr("Rear points apart"), dimension=Dimension.LENGTH, example=length,
               names=(tr("rear spacing"),), stands=_typed(stands, "rear_spacing"), hint=apart),
    )  # fmt: skip


def _typed(vehicle: Vehicle | None, key: str) -> str:
    figure: Figure | None = getattr(vehicle, key) if vehicle else None
    return figure.as_typed if figure else ""

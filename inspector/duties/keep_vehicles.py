"""Write vehicles into the register, and what changes in their lives: weighed anew, GVM raised, sold to another member.

A vehicle heavier than its GVM is kept, because it happens and a pull has to be reckoned with what it weighs; every
place that shows it says so.
"""

from collections.abc import Callable, Mapping
from datetime import date

from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.who import check_vehicle_not_evidence, id_of
from inspector.gear.changes import NewVehicleChange
from inspector.gear.rig import GROUND
from inspector.gear.trip import Vehicle
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.rows import new_id
from inspector.units import Dimension, Figure

_LONGEST_TAG = 24
_LEAST_KG, _MOST_KG = 300.0, 60_000.0
_MOST_OVERLOAD_FACTOR = 2.0  # beyond it a figure or a unit was mistyped: pounds for kilograms make 2.2
_LEAST_SPACING_M, _MOST_SPACING_M = 0.2, 2.5


def add_vehicle(
    office: Office,
    tag: str,
    name: str,
    owner: str,
    gvm: Figure,
    mass: Figure | None = None,
    *,
    note: str = "",
    front_spacing: Figure | None = None,
    rear_spacing: Figure | None = None,
) -> Vehicle:
    """Keep a vehicle under its tag. gvm and mass in kilograms, spacings between two recovery points in metres."""
    with office.book.page() as page:
        tag = page.own_ref(tag)
        vehicle = Vehicle(new_id(), tag, name.strip(), owner.strip(), gvm, mass, note, front_spacing, rear_spacing)
        _check_tag(tag)
        _check_facts(vehicle)
        _check_free(page, tag)
        page.add_vehicle(vehicle)
        page.enter("add vehicle", by=office.officer.id, at=office.now, facts=vehicle)
    return vehicle


def change_vehicle(
    office: Office, tag: str, edit: Callable[[Vehicle], Vehicle], why: str, *, on: date | None = None, by: str = ""
) -> Vehicle:
    """Keep new facts of a vehicle; what stood before stays in its history. Returns what stands now.

    edit: makes the new facts from those that stand. on: the day from which they hold. by: who says so, the officer
    where nobody is named.
    """
    if not why.strip():
        raise Refused(tr("reason"), tr("It is empty."), tr("Write what happened, for example weighed with the canopy."))
    with office.book.page() as page:
        stands = page.vehicle(tag)
        check_vehicle_not_evidence(page, stands.tag)
        changed = edit(stands)
        if (changed.id, changed.tag) != (stands.id, stands.tag):
            raise Refused(tr("tag"), tr("A vehicle keeps its tag for good."), tr("Enter the other vehicle by itself."))
        if changed == stands:
            raise Refused(tr("vehicle"), tr("Nothing would change."), tr("Write what is different now."))
        _check_facts(changed)
        day = on or office.today
        _check_day(day, office.today, page.vehicle_changes(stands)[1:])
        facts = NewVehicleChange(day, changed, id_of(office, page, by, tr("by")), why.strip())
        page.add_vehicle_change(facts)
        page.enter("change vehicle", by=office.officer.id, at=office.now, facts={"tag": stands.tag, "as": facts})
    return changed


def vehicle_fields() -> dict[str, str]:
    """What may change of a vehicle, and how a refusal calls it."""
    return {
        "name": tr("name"), "owner": tr("owner"), "gvm": tr("GVM"), "mass": tr("mass"), "note": tr("note"),
        "front_spacing": tr("front spacing"), "rear_spacing": tr("rear spacing"),
    }  # fmt: skip


def kept_words(kept: Mapping[str, tuple[str, ...]], tag: str) -> str:
    """What must be said of a vehicle that is evidence; empty for any other. kept: incidents by the vehicle's tag."""
    refs = kept.get(tag, ())
    said = tr("{tag} is kept as found, as evidence of {refs}: it serves on no trip until it is released.")
    return said.format(tag=tag, refs=", ".join(refs)) if refs else ""


def overload_words(vehicle: Vehicle) -> str:
    """What must be said of a vehicle that weighs more than its GVM; empty for any other."""
    if vehicle.mass is None or not vehicle.is_overloaded:
        return ""
    return tr(
        "{tag} is overloaded: it weighs {mass}, its GVM is {gvm}. Take load off before it drives, or weigh it again.",
        tag=vehicle.tag,
        mass=vehicle.mass.as_typed,
        gvm=vehicle.gvm.as_typed,
    )


def _check_tag(tag: str) -> None:
    plain = tag and tag == tag.strip() and len(tag) <= _LONGEST_TAG and tag.isprintable()
    if not plain or "@" in tag or tag.casefold() == GROUND:
        why = tr("A vehicle's tag has 1 to {most} signs, no space at its ends and no @.", most=_LONGEST_TAG)
        raise Refused(tr("tag"), why, tr("Write what stands on the label, for example V-11."))


def _check_free(page: Page, tag: str) -> None:
    if any(one.tag.casefold() == tag.casefold() for one in page.vehicles()):
        raise Refused(tr("tag"), tr("Another vehicle has the tag “{tag}”.", tag=tag), tr("Choose a free tag."))
    if page.is_taken(tag):
        raise Refused(tr("tag"), tr("A piece of gear has the tag “{tag}”.", tag=tag), tr("Choose a free tag."))


def _check_facts(vehicle: Vehicle) -> None:
    if not vehicle.name:
        raise Refused(tr("name"), tr("The name is empty."), tr("Write what it is, for example medium wagon, grey."))
    check_line(tr("name"), vehicle.name)
    check_line(tr("owner"), vehicle.owner)
    _check_mass(tr("GVM"), vehicle.gvm)
    if vehicle.mass:
        _check_mass(tr("mass"), vehicle.mass)
        if vehicle.mass.si > _MOST_OVERLOAD_FACTOR * vehicle.gvm.si:
            why = tr(
                "{mass} is more than twice the GVM of {gvm}.", mass=vehicle.mass.as_typed, gvm=vehicle.gvm.as_typed
            )
            raise Refused(tr("mass"), why, tr("Look at the figures and their units again; lb and kg are easily mixed."))
    for name, figure in ((tr("front spacing"), vehicle.front_spacing), (tr("rear spacing"), vehicle.rear_spacing)):
        if figure and not _is(figure, Dimension.LENGTH, _LEAST_SPACING_M, _MOST_SPACING_M):
            why = tr("“{typed}” cannot lie between two recovery points at one end.", typed=figure.as_typed)
            raise Refused(name, why, tr("Measure from one point's middle to the other's, for example 0.85 m."))


def _check_mass(field: str, figure: Figure) -> None:
    if not _is(figure, Dimension.MASS, _LEAST_KG, _MOST_KG):
        why = tr("“{typed}” cannot be a vehicle's mass: that lies between 300 kg and 60 t.", typed=figure.as_typed)
        raise Refused(field, why, tr("Write the figure of its plate or of the weighbridge, for example 2650 kg."))


def _is(figure: Figure, dimension: Dimension, least: float, most: float) -> bool:
    return figure.dimension is dimension and least <= figure.si <= most


def _check_day(day: date, today: date, earlier: tuple[NewVehicleChange, ...]) -> None:
    """What was entered last stands, so days may not run backwards."""
    if day > today:
        raise Refused(tr("day"), tr("The day lies in the future."), tr("Write it down when the day has come."))
    if earlier and day < earlier[-1].on:
        why = tr("A change of {day} stands already.", day=show_day(earlier[-1].on))
        raise Refused(tr("day"), why, tr("Write that day or a later one, and tell the true day in the reason."))

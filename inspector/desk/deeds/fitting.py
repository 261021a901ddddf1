"""A part fitted to a vehicle, or taken off it."""

from inspector.desk.deeds.common import by, note, on_day, told
from inspector.desk.deeds.words import ends, sides
from inspector.desk.form.asked import Asked, OneOf
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.opened import Opened
from inspector.duties.fit_parts import fit_part, take_off_part
from inspector.duties.office import Office
from inspector.gear.fitting import End, Fitted, Side
from inspector.language import tr


def fit(piece: Opened) -> Deed[Opened]:
    """It sits on a vehicle."""

    def do(office: Office, about: Opened, given: Values) -> Done:
        return fitted_there(office, about.tag, given.one("vehicle", str), given)

    return Deed(
        "fit part", tr("Fit it to a vehicle"), tr("{tag} is fitted to a vehicle", tag=piece.tag),
        tr("From this day on it sits there, and a rig on that vehicle reckons with it. A recovery point, a tube or a "
           "winch is held until a competent person has seen how it is fastened there."),
        lambda facts, about: (
            OneOf(key="vehicle", label=tr("Vehicle"), needed=True,
                  choices=[(f"{one.tag} {one.name}", one.tag) for one in facts.vehicles] or [(tr("none yet"), "")]),
            *place_fields(), on_day(facts.today), note(), by(facts, tr("fitted by")),
        ),
        do, tr("Fit it"),
    )  # fmt: skip


def place_fields() -> tuple[Asked, ...]:
    """Where on the vehicle; `fitted_there` reads them."""
    return (
        OneOf(key="end", label=tr("End"), choices=ends(), names=(tr("place"),)),
        OneOf(key="side", label=tr("Side, as the driver sees it"), choices=sides()),
    )


def fitted_there(office: Office, tag: str, vehicle: str, given: Values) -> Done:
    """Fit a part to a vehicle, where and when the form says."""
    to = Fitted(vehicle, given.one("end", End), given.one("side", Side))
    judged = fit_part(office, tag, to, on=given.day("on"), by=given.one("by", str), note=given.text("note"))
    return told(tr("{tag} sits on {vehicle}.", tag=judged.dossier.item.tag, vehicle=vehicle), judged)


def taken_off(office: Office, tag: str, given: Values) -> Done:
    """Take a part off its vehicle, when the form says."""
    judged = take_off_part(office, tag, on=given.day("on"), by=given.one("by", str), note=given.text("note"))
    return told(tr("{tag} sits on no vehicle any more.", tag=judged.dossier.item.tag), judged)


def take_off(piece: Opened) -> Deed[Opened]:
    """It sits on no vehicle any more."""
    return Deed(
        "take off part", tr("Take it off its vehicle"), tr("{tag} is taken off its vehicle", tag=piece.tag),
        tr("Say in the note why, and where it lies."),
        lambda facts, about: (on_day(facts.today), note(), by(facts, tr("fitted by"))),
        lambda office, about, given: taken_off(office, about.tag, given), tr("Take it off"),
        fits=lambda about: "" if about.judged.dossier.item.facts.fitted_to else tr("It sits on no vehicle."),
    )  # fmt: skip

"""Deeds about several pieces that were chosen in the list."""

from msgspec.structs import replace

from inspector.desk.deeds.common import by, why
from inspector.desk.form.asked import Asked, OneOf, Tags
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.duties.give_opinion import doubt
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip
from inspector.gear.trip import Trip
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused

Pieces = tuple[str, ...]


def pack(tags: Pieces) -> Deed[Pieces]:
    """Put them into the kit of a trip."""

    def do(office: Office, about: Pieces, given: Values) -> Done:
        ref = given.one("trip", str)
        if not ref:
            raise Refused(tr("Trip"), tr("No trip lies ahead."), tr("Plan one first, on the page of the trip."))
        more = given.tags("tags")
        kept = change_trip(office, ref, lambda stands: _with(stands, more), given.text("why"))
        return Done(tr("The kit of {name} is {count} pieces now.", name=kept.name, count=len(kept.kit)))

    return Deed(
        "pack", tr("Add to a trip"), tr("Add pieces to the kit of a trip"),
        tr("They stand in its kit from now on; whether each may go is judged for the days of the trip."),
        lambda facts, about: (
            OneOf(key="trip", label=tr("Trip"), needed=True, choices=[
                (tr("{day}: {name}", day=show_day(one.first_on), name=one.name), one.ref)
                for one in reversed(facts.trips) if one.last_on >= facts.today
            ] or [(tr("no trip lies ahead"), "")]),
            _tags(about), why(),
        ),
        do, tr("Add them"),
    )  # fmt: skip


def _with(stands: Trip, more: Pieces) -> Trip:
    return replace(stands, kit=tuple(dict.fromkeys([*stands.kit, *more])))


def hold(tags: Pieces) -> Deed[Pieces]:
    """Hold them all, for example a maker's batch that is called back."""

    def do(office: Office, about: Pieces, given: Values) -> Done:
        pieces = given.tags("tags")
        with office.book.together():  # all of them or none
            for tag in pieces:
                doubt(office, tag, given.text("why"), given.one("by", str))
        return Done(tr_n("One piece is held.", "{count} pieces are held.", len(pieces)),
                    tr("Each is held until a competent person has inspected it."))  # fmt: skip

    return Deed(
        "hold", tr("Hold them all"), tr("Hold several pieces"),
        tr("For example a maker's batch that is called back. Each is held until a competent person has inspected it; "
           "whoever has one is told by a letter from “Falls due”."),
        lambda facts, about: (_tags(about), why(needed=True, hint=tr("What is known, and from whom.")), by(facts)),
        do, tr("Hold them"),
    )  # fmt: skip


def _tags(stands: Pieces) -> Asked:
    return Tags(key="tags", label=tr("Pieces"), needed=True, stands=stands, names=(tr("tag"), tr("piece"), tr("kit")))

"""Which pieces are to be inspected now: what is due or soon will be, of those that somebody can take into his hands."""

from datetime import timedelta

from inspector.duties.office import Office
from inspector.duties.what_falls_due import what_falls_due
from inspector.gear.falls_due import Due
from inspector.gear.whereabouts import Where

_SOON_DAYS = 30
_LOOKS = {Due.INSPECTION, Due.FIRST_INSPECTION, Due.READING}
_AT_HAND = {Where.IN_STORE, Where.ON_VEHICLE}


def due_to_inspect(office: Office) -> tuple[str, ...]:
    """Tags of the pieces that are due within 30 days and neither lent, lost nor gone, the longest overdue first."""
    lines = what_falls_due(office, office.today + timedelta(days=_SOON_DAYS))
    tags = tuple(dict.fromkeys(one.about for one in lines if one.what in _LOOKS))
    with office.book.reading() as page:
        items = page.items(tags)
        where = page.whereabouts(list({one.id: one for one in items.values()}.values()))
    return tuple(tag for tag in tags if tag in items and where[items[tag].id].where in _AT_HAND)

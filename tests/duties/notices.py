"""Short words for recalls: a maker's notice, and pieces that are of it, may be of it, or are not."""

from datetime import date

from msgspec.structs import replace

from inspector.duties.call_in import CalledIn, call_in
from inspector.duties.office import Office
from inspector.gear.item import NewItem
from inspector.gear.recall_notice import Issuer, Meant, NewRecall
from tests.duties.gear import SHACKLE_READINGS, shackle
from tests.duties.rigs import fit

MEANT = Meant("Kelpline", ("bow_shackle",), ("QX7",), "KS240100", "KS240199")
WHY = "Pins of this batch were hardened wrongly."
REMEDY = "Send the pin back; the maker replaces it."


def marked(tag: str, serial: str, mark: str = "KELPLINE", **more: object) -> NewItem:
    """A shackle with these marks."""
    return replace(shackle(tag), maker_mark=mark, serial=serial, **more)


def booked(office: Office, tag: str, serial: str, mark: str = "KELPLINE", **more: object) -> None:
    """A shackle with these marks, inspected and fit."""
    fit(office, marked(tag, serial, mark, **more), SHACKLE_READINGS)


def notice(office: Office, meant: Meant = MEANT) -> NewRecall:
    """The maker's notice."""
    return NewRecall(office.today, Issuer.MAKER, meant, WHY, REMEDY, "Safety notice 7", date(2026, 11, 20))


def entered(office: Office, meant: Meant = MEANT) -> CalledIn:
    """The maker's notice, entered."""
    return call_in(office, notice(office, meant))

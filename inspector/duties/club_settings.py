"""What the club wants of every document and figure: its name, units, paper, the sign between whole and part."""

from dataclasses import dataclass, replace

from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import System

_UNITS, _PAPER, _DECIMAL, _CLUB = "units", "paper", "decimal", "club"
PAPERS = ("a4", "letter")
DECIMALS = (".", ",")


@dataclass(frozen=True, slots=True)
class ClubSettings:
    """club: its name. page: "a4" or "letter"; decimal: "." or ","."""

    club: str
    system: System
    page: str
    decimal: str


def club_settings(office: Office) -> ClubSettings:
    """What stands in the register; where nothing was ever set, what the program begins with."""
    with office.book.reading() as page:
        return ClubSettings(
            page.setting(_CLUB),
            System(page.setting(_UNITS, office.system.value)),
            page.setting(_PAPER, office.page),
            page.setting(_DECIMAL, office.decimal),
        )


def as_the_club_wants(office: Office) -> Office:
    """The office with the units, the paper and the decimal sign of its register."""
    wanted = club_settings(office)
    return replace(office, system=wanted.system, page=wanted.page, decimal=wanted.decimal)


def change_club_settings(office: Office, wanted: ClubSettings) -> Office:
    """Keep what the club wants from now on; papers printed before stay as they are. The office as it is then."""
    club = wanted.club.strip()
    if not club:
        raise Refused(tr("club"), tr("The name is empty."), tr("Write the club's name; it stands on every document."))
    check_line(tr("club"), club)
    if wanted.page not in PAPERS or wanted.decimal not in DECIMALS:
        raise Refused(
            tr("paper"), tr("It is none that the program knows."), tr("Choose one of those that are offered.")
        )
    stands = club_settings(office)
    facts = _told(replace(wanted, club=club))
    changed = {key: text for key, text in facts.items() if _told(stands)[key] != text}
    if not changed:
        raise Refused(tr("settings"), tr("Nothing would change."), tr("Choose what is to be different, or leave."))
    with office.book.page() as page:
        for key, text in changed.items():
            page.set(key, text)
        page.enter("club settings", by=office.officer.id, at=office.now, facts=changed)
    return as_the_club_wants(office)


def _told(settings: ClubSettings) -> dict[str, str]:
    return {
        _CLUB: settings.club,
        _UNITS: settings.system.value,
        _PAPER: settings.page,
        _DECIMAL: settings.decimal,
    }

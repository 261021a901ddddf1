"""What the club wants of every document and figure: its name and mark, units, paper, the decimal sign."""

import hashlib
from base64 import b64decode, b64encode
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.named_files import read_bytes
from inspector.duties.office import Office
from inspector.duties.overtaken import typed_anew
from inspector.duties.plain_lines import check_line
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.units import System

_UNITS, _PAPER, _DECIMAL, _CLUB, _MARK = "units", "paper", "decimal", "club", "mark"
PAPERS = ("a4", "letter")
DECIMALS = (".", ",")


class ClubSettings(Struct, frozen=True):
    """club: its name. page: "a4" or "letter"; decimal: "." or ",". mark: a small PNG, or empty."""

    club: str
    system: System
    page: str
    decimal: str
    mark: bytes = b""


def club_settings(office: Office) -> ClubSettings:
    """What stands in the register; where nothing was ever set, what the program begins with."""
    with office.book.reading() as page:
        return _settings_on(page, office)


def _settings_on(page: Page, office: Office) -> ClubSettings:
    return ClubSettings(
        page.setting(_CLUB),
        System(page.setting(_UNITS, office.system.value)),
        page.setting(_PAPER, office.page),
        page.setting(_DECIMAL, office.decimal),
        b64decode(page.setting(_MARK)),
    )


def _fields() -> dict[str, str]:
    """What may change, and by which field of the form a refusal means it."""
    return {"club": "club", "system": "units", "page": "paper", "decimal": "decimal", "mark": "mark"}


def as_the_club_wants(office: Office) -> Office:
    """The office with the units, the paper and the decimal sign of its register."""
    wanted = club_settings(office)
    return replace(office, system=wanted.system, page=wanted.page, decimal=wanted.decimal)


def change_club_settings(office: Office, wanted: ClubSettings, seen: ClubSettings | None = None) -> Office:
    """Keep what the club wants from now on; papers printed before stay as they are. The office as it is then.

    seen: as whoever changes it has seen it; refused where the same was changed since.
    """
    club = wanted.club.strip()
    if not club:
        raise Refused(tr("club"), tr("The name is empty."), tr("Write the club's name; it stands on every document."))
    check_line(tr("club"), club)
    if wanted.page not in PAPERS or wanted.decimal not in DECIMALS:
        raise Refused(
            tr("paper"), tr("It is none that the program knows."), tr("Choose one of those that are offered.")
        )
    with office.book.page() as page:
        stands = _settings_on(page, office)
        edited = typed_anew(seen or stands, replace(wanted, club=club), _fields())(stands)
        changed = {key: text for key, text in _texts(edited).items() if _texts(stands)[key] != text}
        if not changed:
            raise Refused(tr("settings"), tr("Nothing would change."), tr("Choose what is to be different, or leave."))
        for key, text in changed.items():
            page.set(key, text)
        page.enter("club settings", by=office.officer.id, at=office.now, facts=_told(changed))
    return as_the_club_wants(office)


def read_mark(file: Path) -> bytes:
    """The club's mark from a picture, as it goes on documents; refused where it is none."""
    from inspector.paper.photo import mark_picture  # here: the club's wishes are asked for at every start

    return mark_picture(read_bytes(file))


def _told(changed: dict[str, str]) -> dict[str, str]:
    """What the ledger says of it: of the mark its checksum, empty where it was taken away."""
    mark = changed.get(_MARK)
    return changed | ({_MARK: hashlib.sha256(b64decode(mark)).hexdigest() if mark else ""} if mark is not None else {})


def _texts(settings: ClubSettings) -> dict[str, str]:
    return {
        _CLUB: settings.club,
        _UNITS: settings.system.value,
        _PAPER: settings.page,
        _DECIMAL: settings.decimal,
        _MARK: b64encode(settings.mark).decode("ascii"),
    }

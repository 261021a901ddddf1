"""The out tray: what every document shares, from its number to the file it lands in."""

from base64 import b64decode
from pathlib import Path

from msgspec import Struct

from inspector.duties.office import Office
from inspector.gear.papers import Imprint
from inspector.language import show_day, tr
from inspector.paper.printed import Printed
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.wording import cautions

_SHORT = 12


def next_number(page: Page, letter: str, kind: str) -> str:
    """The next number of its kind; it carries the name of this copy, so two copies never issue the same one."""
    return f"{letter}-{page.origin}-{page.document_count(kind) + 1:04d}"


def imprint(office: Office, page: Page, title: str, number: str) -> Imprint:
    """Club, title, number, day, who prepared it, and what it rests on, with the ledger's head before this document."""
    club, head = page.setting("club", tr("Recovery gear register")), page.head()
    rests_on = (
        _rulebook_words(office),
        tr("Ledger head {head}", head=head[:_SHORT]),
        tr("Facts of {day}", day=show_day(office.today)),
    )
    mark = b64decode(page.setting("mark"))
    return Imprint(club, title, number, office.today, _prepared_by(office), rests_on, cautions(office.rules), mark)


def _prepared_by(office: Office) -> str:
    """Who is at the desk; without a passphrase given nobody knows that it is so, and the document says it."""
    name = office.officer.name
    stated = tr("(name as stated)").replace(" ", "\N{NO-BREAK SPACE}")  # it stands on one line
    return name if office.vouched else f"{name} {stated}"


def _rulebook_words(office: Office) -> str:
    """The rulebook by its short name, and whose limits are in it."""
    name, club = office.rules.hash[:_SHORT], office.rules.club
    return (
        tr("Rulebook {name} with the club's “{title}”", name=name, title=club.title)
        if club
        else tr("Rulebook {name}", name=name)
    )


class Paper(Struct, frozen=True):
    """A document in the out tray. missing: signs the type does not have, printed as empty squares; to be told."""

    path: Path
    missing: tuple[str, ...]


def put_out(office: Office, number: str, printed: Printed) -> Paper:
    """Write the PDF into the out tray. The deed is in the book already, so a full disk loses nothing."""
    place = office.out_tray / f"{number}.pdf"
    try:
        office.out_tray.mkdir(parents=True, exist_ok=True)
        place.write_bytes(printed.pdf)
    except OSError as error:
        why = tr("{place} cannot be written ({why}).", place=place, why=error.strerror)
        raise Refused(
            tr("document"), why, tr("The deed itself is kept. Make room or choose another folder, then print again.")
        ) from error
    return Paper(place, printed.missing_glyphs)

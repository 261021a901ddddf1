"""Which retirements have a notice that was printed; asked of every retired piece by what falls due."""

from inspector.gear.dossier import Dossier
from inspector.gear.papers import RetirementNotice
from inspector.register.page import Page
from inspector.register.rows import from_body

NOTICE = "retirement_notice"  # what the register calls this kind of document


def printed_notice(page: Page, dossier: Dossier) -> RetirementNotice | None:
    """The notice that was printed of the retirement that stands, or None where there is none yet."""
    kept = page.latest_document(NOTICE, dossier.item.id)
    before = from_body(kept[1], RetirementNotice) if kept else None
    standing = {one.id for one in page.standing_retirements(dossier.item, dossier.strikes)}
    return before if before and before.retirement in standing else None

"""Which retirements have a notice that was printed; asked of every retired piece by what falls due."""

from collections.abc import Mapping

from inspector.gear.dossier import Dossier
from inspector.gear.papers import RetirementNotice
from inspector.register.dossiers import Retired
from inspector.register.page import Page
from inspector.register.rows import from_body

NOTICE = "retirement_notice"  # what the register calls this kind of document


def printed_notice(page: Page, dossier: Dossier) -> RetirementNotice | None:
    """The notice that was printed of the retirement that stands, or None where there is none yet."""
    key = dossier.item.id
    return printed_notices(page, page.retired([key])).get(key)


def printed_notices(page: Page, retired: Mapping[str, Retired]) -> dict[str, RetirementNotice]:
    """Those notices of many pieces, by the piece's id, in one question."""
    kept = page.latest_documents(NOTICE, list(retired))
    printed = {key: from_body(body, RetirementNotice) for key, (_, body) in kept.items()}
    return {key: one for key, one in printed.items() if one.retirement in retired[key].verdicts}

"""Which numbered documents are about a piece or name it, and what each is called."""

from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.gear.judged import Judged
from inspector.gear.lists import PaperRow
from inspector.language import tr
from inspector.register.evidence_page import Kept
from inspector.register.page import Page

SLIPS_ABOUT = "slips"


def documents(page: Page, found: Judged) -> tuple[Kept, ...]:
    """Every document about a piece or that names one of its tags, the newest first."""
    item = found.dossier.item
    return page.documents_of(item, page.tags_ever(item))


def papers_named(office: Office, tag: str) -> tuple[PaperRow, ...]:
    """The same in words; nothing is said of whether one can be printed again."""
    found = open_item(office, tag)
    with office.book.reading() as page:
        return tuple(PaperRow(one.number, one.on, paper_name(one), again=False) for one in documents(page, found))


def paper_name(kept: Kept) -> str:
    """What a document is called."""
    words = {
        "retirement_notice": tr("Retirement notice"),
        "voucher": tr("Voucher"),
        "trip_sheet": tr("Trip sheet"),
        "evidence_list": tr("Evidence list"),
        "evidence_bundle": tr("Checksum of an evidence bundle"),
        "rig_sheet": tr("Rig sheet"),
        "handover_protocol": tr("Handover protocol"),
        "count_list": tr("Count list"),
        "letter": tr("Slips") if kept.about == SLIPS_ABOUT else tr("Letter"),
        "item_record": tr("Record of the piece"),
        "register_report": tr("Report on the gear"),
        "recall_letter": tr("Recall letter"),
        "recall_withdrawal": tr("Letter of withdrawal"),
        "label_sheet": tr("Item labels"),
        "tag_sheet": tr("Hold and derating tags"),
        "lending_slip": tr("Lending slip"),
    }
    return words.get(kept.kind, tr("Document"))

"""The documents that were printed of a piece or that name it, and one of them printed again as it was said."""

from collections.abc import Callable

from inspector.duties.counts import counts
from inspector.duties.evidence_paper import EVIDENCE, print_evidence
from inspector.duties.look_up import open_item
from inspector.duties.notices_printed import printed_notice
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.papers_named import SLIPS_ABOUT, documents, paper_name
from inspector.duties.print_count import print_count
from inspector.duties.print_labels import LABELS, print_labels_again
from inspector.duties.print_lending_slip import SLIP, print_lending_slip_again
from inspector.duties.print_letters import LETTER, print_again
from inspector.duties.print_recall import RECALL, print_recall_again
from inspector.duties.print_record import RECORD, print_record_again
from inspector.duties.print_report import REPORT, print_report_again
from inspector.duties.print_slips import print_slips_again
from inspector.duties.print_tags import print_tags_again
from inspector.duties.print_voucher import print_voucher, printed_voucher
from inspector.duties.print_withdrawal import WITHDRAWAL, print_withdrawal_again
from inspector.duties.retire_item import print_notice
from inspector.duties.tags_left_on import TAGS
from inspector.gear.judged import Judged
from inspector.gear.lists import PaperRow
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.evidence_page import Kept
from inspector.register.page import Page

_Reprint = Callable[[Office], Paper]
_NOTICE, _VOUCHER, _COUNT = "retirement_notice", "voucher", "count_list"
_BY_NUMBER: dict[str, Callable[[Office, str], Paper]] = {
    LABELS: print_labels_again,
    TAGS: print_tags_again,
    SLIP: print_lending_slip_again,
    RECORD: print_record_again,
    RECALL: print_recall_again,
    WITHDRAWAL: print_withdrawal_again,
    REPORT: print_report_again,
}


def papers_of(office: Office, found: Judged) -> tuple[PaperRow, ...]:
    """Every numbered document about a piece or that names it, the newest first."""
    with office.book.reading() as page:
        return tuple(
            PaperRow(one.number, one.on, paper_name(one), _reprint(page, found, one) is not None)
            for one in documents(page, found)
        )


def print_kept(office: Office, tag: str, number: str) -> Paper:
    """Print a document of a piece again, as it was said; refused where it stands no more or was never kept for that."""
    found = open_item(office, tag)
    with office.book.reading() as page:
        wanted = next((one for one in documents(page, found) if one.number == number), None)
        again = _reprint(page, found, wanted) if wanted else None
    if again is None:
        why = tr("{number} cannot be printed again.", number=number)
        raise Refused(tr("document"), why, tr("Print a new one; the old one stays in the history."))
    return again(office)


def _reprint(page: Page, found: Judged, kept: Kept) -> _Reprint | None:
    """What prints this very document again; None where its duty would print another one, or none does."""
    tag = found.dossier.item.tag
    if by_number := _BY_NUMBER.get(kept.kind):
        return lambda office: by_number(office, kept.number)
    if kept.kind == _NOTICE:
        notice = printed_notice(page, found.dossier)
        is_it = notice is not None and notice.imprint.number == kept.number
        return (lambda office: print_notice(office, tag)) if is_it else None
    if kept.kind == _VOUCHER:
        voucher = printed_voucher(page, found)
        is_it = voucher is not None and voucher.imprint.number == kept.number
        return (lambda office: print_voucher(office, tag)) if is_it else None
    last = page.latest_document(kept.kind, kept.about)
    return _reprint_of_others(page, kept) if last and last[0] == kept.number else None


def _reprint_of_others(page: Page, kept: Kept) -> _Reprint | None:
    """Of what is about an incident, a person or a count, the last one of which can be printed again."""
    if kept.kind == EVIDENCE:
        ref = next(one.ref for one in page.incidents() if one.id == kept.about)
        return lambda office: print_evidence(office, ref, again=True)
    if kept.kind == _COUNT:
        count = next(one.ref for one in counts(page) if one.taken.id == kept.about)
        return lambda office: print_count(office, count)
    if kept.kind == LETTER and kept.about == SLIPS_ABOUT:
        return print_slips_again
    if kept.kind == LETTER:
        name = next(one.name for one in page.people() if one.id == kept.about)
        return lambda office: print_again(office, name)[0]
    return None

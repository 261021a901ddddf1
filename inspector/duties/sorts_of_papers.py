"""Every sort of document there is, and how one of it is printed from whatever a register holds.

A new sort joins by an entry in SORTS. What an entry prints it may also enter: it works on a copy that is thrown away.
"""

from collections.abc import Callable, Iterable

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.bench import HandoutAsked, bench_topics
from inspector.duties.close_count import close_count
from inspector.duties.evidence_paper import print_evidence
from inspector.duties.hand_over import hand_over, last_protocol, print_protocol
from inspector.duties.keep_rigs import rigs
from inspector.duties.lend import loans
from inspector.duties.look_up import list_gear, open_item, people
from inspector.duties.office import Office, One
from inspector.duties.out_tray import Paper
from inspector.duties.print_count import print_count
from inspector.duties.print_handout import print_handout
from inspector.duties.print_labels import print_labels
from inspector.duties.print_lending_slip import print_lending_slip
from inspector.duties.print_letters import print_letters
from inspector.duties.print_recall import recall_pieces
from inspector.duties.print_record import print_record
from inspector.duties.print_report import print_report
from inspector.duties.print_rig_sheet import print_rig_sheet
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.print_slips import print_slips
from inspector.duties.print_tags import print_tags
from inspector.duties.print_voucher import print_voucher
from inspector.duties.print_withdrawal import print_withdrawal
from inspector.duties.retire_item import print_notices
from inspector.duties.tag_words import why_no_tag
from inspector.duties.take_stock import begin_count, count_states
from inspector.duties.tell_incident import incidents
from inspector.duties.withdraw_recall import withdraw_recall
from inspector.duties.work_rigs import work_kept_rig
from inspector.gear.label_sizes import LABEL_SIZES
from inspector.gear.outcome import Outcome
from inspector.gear.whereabouts import Where
from inspector.language import later, tr
from inspector.refused import Refused

_EVERYTHING = 1_000_000
_A_PAGE = 8
_LEFT = (Where.SOLD, Where.GIVEN_BACK, Where.DESTROYED)


class Sort(Struct, frozen=True):
    """A sort of document. key: what its files are called; title: to be looked up; printed: one or several of it."""

    key: str
    title: str
    printed: Callable[[Office], Iterable[Paper]]


def _trip_sheet(office: Office) -> Iterable[Paper]:
    return [print_trip_sheet(office, "next")]


def _notices(office: Office) -> Iterable[Paper]:
    """One of each kind of gear of which a piece is retired."""
    retired = list_gear(office, outcome=Outcome.RETIRE, limit=_EVERYTHING).rows
    first = {row.kind_name: row.tag for row in reversed(retired)}
    return print_notices(office, sorted(_some(first.values(), tr("No piece is retired."))))


def _rig_sheet(office: Office) -> Iterable[Paper]:
    kept = _some(rigs(office), tr("No rig is kept."))
    return [print_rig_sheet(office, work_kept_rig(office, kept[0].ref))]


def _handouts(office: Office) -> Iterable[Paper]:
    return [print_handout(office, HandoutAsked(topic.key, (), "")) for topic in bench_topics(office)]


def _letter(office: Office) -> Iterable[Paper]:
    return print_letters(office)[:1]


def _slips(office: Office) -> Iterable[Paper]:
    return [print_slips(office)]


def _vouchers(office: Office) -> Iterable[Paper]:
    """One for each way in which a piece has left."""
    with office.book.reading() as page:
        items = page.every_item()
        where = page.whereabouts(items)
    left = {where[one.id].where: one.tag for one in reversed(items) if where[one.id].where in _LEFT}
    tags = _some(left.values(), tr("No piece was sold, given back or made unusable."))
    return [print_voucher(office, tag) for tag in sorted(tags)]


def _evidence(office: Office) -> Iterable[Paper]:
    return [print_evidence(office, _some(incidents(office), tr("No incident is written down."))[0].ref)]


def _labels(office: Office) -> Iterable[Paper]:
    """The large tags to cut apart, and a sheet of labels."""
    rows = list_gear(office, limit=_EVERYTHING).rows
    tags = _some((row.tag for row in rows if row.outcome is not Outcome.RETIRE), tr("There is no piece."))[:_A_PAGE]
    small = next(one.key for one in LABEL_SIZES if not one.is_cut_apart)
    return [print_labels(office, tags), print_labels(office, tags, small)]


def _tags(office: Office) -> Iterable[Paper]:
    """One of each outcome that has a tag."""
    found = []
    for outcome in (Outcome.RETIRE, Outcome.HOLD, Outcome.DERATE):
        rows = list_gear(office, outcome=outcome, limit=_EVERYTHING).rows
        with office.book.reading() as page:
            found += [row.tag for row in rows if not why_no_tag(page, open_item(office, row.tag))][:1]
    return [print_tags(office, _some(found, tr("No piece is held, derated or retired.")))]


def _lending_slip(office: Office) -> Iterable[Paper]:
    out = _some(loans(office), tr("Nothing is lent."))
    return [print_lending_slip(office, out[0].holder)]


def _record(office: Office) -> Iterable[Paper]:
    """Of the piece with the longest history."""
    tags = _some((row.tag for row in list_gear(office, limit=_EVERYTHING).rows), tr("There is no piece."))
    return [print_record(office, max(tags, key=lambda tag: len(open_item(office, tag).dossier.inspections)))]


def _report(office: Office) -> Iterable[Paper]:
    return [print_report(office)]


def _recall(office: Office) -> Iterable[Paper]:
    out = _some(loans(office), tr("Nothing is lent."))
    return recall_pieces(office, [out[0].tag], tr("A specimen: nothing is called in.")).papers[:1]


def _withdrawal(office: Office) -> Iterable[Paper]:
    out = _some(loans(office), tr("Nothing is lent."))
    ref = recall_pieces(office, [out[0].tag], tr("A specimen: nothing is called in.")).ref
    family = open_item(office, out[0].tag).dossier.kind.family
    others = [one for one in people(office) if one.id != office.officer.id and one.is_competent(family, office.today)]
    second = _some(others, tr("There is no second competent person."))[0]
    both = replace(office, vouched_second=second.id)  # nobody is asked for a passphrase on a copy that is thrown away
    withdraw_recall(both, ref, tr("A specimen: nothing was called in."), second=second.id)
    return print_withdrawal(office, ref)[:1]


def _handover(office: Office) -> Iterable[Paper]:
    if last_protocol(office):
        return [print_protocol(office)]
    others = [one for one in people(office) if one.id != office.officer.id]
    to = _some(others, tr("There is nobody to hand over to."))[0]
    for ref in _open_counts(office):
        close_count(office, ref)
    begin_count(office, "specimen-2")  # a handover wants a count of everything; nothing is said to be there
    close_count(office, "specimen-2")
    return [hand_over(office, to.id, office.out_tray).paper]


def _count_list(office: Office) -> Iterable[Paper]:
    still_open = _open_counts(office)
    return [print_count(office, still_open[0] if still_open else begin_count(office, "specimen-1").ref)]


def _open_counts(office: Office) -> list[str]:
    return [one.ref for one in count_states(office) if one.closed is None]


def _some(found: Iterable[One], why_none: str) -> list[One]:
    """What there is; refused where there is nothing to print from."""
    every = list(found)
    if not every:
        raise Refused(tr("document"), why_none, tr("The sample register has one of every sort: inspector demo."))
    return every


SORTS = (
    Sort("trip-sheet", later("Trip sheet"), _trip_sheet),
    Sort("retirement-notice", later("Retirement notice"), _notices),
    Sort("rig-sheet", later("Rig sheet"), _rig_sheet),
    Sort("handout", later("Handout"), _handouts),
    Sort("letter", later("Letter"), _letter),
    Sort("slips", later("Slips"), _slips),
    Sort("voucher", later("Voucher"), _vouchers),
    Sort("labels", later("Item labels"), _labels),
    Sort("tags", later("Hold and derating tags"), _tags),
    Sort("lending-slip", later("Lending slip"), _lending_slip),
    Sort("record", later("Record of the piece"), _record),
    Sort("report", later("Report on the gear"), _report),
    Sort("recall-letter", later("Recall letter"), _recall),
    Sort("recall-withdrawal", later("Letter of withdrawal"), _withdrawal),
    Sort("evidence-list", later("Evidence list"), _evidence),
    Sort("count-list", later("Count list"), _count_list),
    Sort("handover-protocol", later("Handover protocol"), _handover),  # the last: it closes every count
)

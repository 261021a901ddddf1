"""Hand the register on to the next equipment officer, in one deed with its protocol."""

from datetime import date
from pathlib import Path

from msgspec import Struct

from inspector.duties.back_up import facts_of, usual_folder
from inspector.duties.counts import Count, counts
from inspector.duties.handover_lists import tables
from inspector.duties.judge_anew import judge_anew
from inspector.duties.keep_passphrases import check_may_hand_over
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.who import person_of
from inspector.gear.papers import HandoverProtocol
from inspector.gear.person import Person
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr, tr_n
from inspector.paper.handover_protocol import handover_protocol
from inspector.paper.page_style import PageSize
from inspector.refused import Refused
from inspector.register.backup import Backup, back_up
from inspector.register.page import Page
from inspector.register.rows import from_body

_KIND = "handover_protocol"
_ABOUT = "handover"


class HandedOver(Struct, frozen=True):
    """What came of a handover: its protocol, the copy that was made, and the paper to sign."""

    protocol: HandoverProtocol
    backup: Backup
    paper: Paper


def hand_over(office: Office, to: str, folder: Path | None = None) -> HandedOver:
    """Make a person of the register the club's equipment officer, with a copy of the register and a protocol to sign.

    to: name or id. folder: where the copy goes. The copy holds all but the handing over itself.
    """
    with office.book.reading() as page:
        _check(office, page, to)
    judge_anew(office)  # what time alone has changed belongs into the lists
    made = back_up(office.book, folder or usual_folder(office), office.today)
    with office.book.page() as page:
        old, new, count = _check(office, page, to)
        _check_same(page, made)
        number = next_number(page, "H", _KIND)
        protocol = _protocol(office, page, (old, new), count, made, number)
        page.add_document(number, _KIND, office.today, _ABOUT, protocol)
        page.set("officer", new.id)
        facts = {"from": old.id, "to": new.id, "number": number, "count": count.ref, "backup": facts_of(made)}
        page.enter("hand over", by=office.officer.id, at=office.now, facts=facts)
    return HandedOver(protocol, made, _printed(office, protocol))


def last_protocol(office: Office) -> HandoverProtocol | None:
    """The protocol of the last handover as it was kept; None where there was none."""
    with office.book.reading() as page:
        kept = page.latest_document(_KIND, _ABOUT)
    return from_body(kept[1], HandoverProtocol) if kept else None


def print_protocol(office: Office) -> Paper:
    """Print the protocol of the last handover again, as it was kept."""
    kept = last_protocol(office)
    if kept is None:
        why = tr("The register was never handed over.")
        raise Refused(tr("handover"), why, tr("Hand it over first: inspector handover --to NAME."))
    return _printed(office, kept)


def _printed(office: Office, protocol: HandoverProtocol) -> Paper:
    return put_out(office, protocol.imprint.number, handover_protocol(protocol, PageSize(office.page)))


def _check(office: Office, page: Page, to: str) -> tuple[Person, Person, Count]:
    """Who hands over to whom, on which count; refused where it cannot be."""
    new = person_of(page, to, tr("to"))
    old = person_of(page, page.setting("officer"), tr("officer"))
    if new.id == old.id:
        why = tr("{name} is the equipment officer already.", name=new.name)
        raise Refused(tr("to"), why, tr("Name the person who takes the register over."))
    check_may_hand_over(office, page)
    every = counts(page)
    if still_open := [one.ref for one in every if one.closed is None]:
        why = tr_n(
            "The count {refs} is still open.",
            "The counts {refs} are still open.",
            len(still_open),
            refs=", ".join(still_open),
        )
        raise Refused(tr("count"), why, tr("Finish it and close it first: inspector stock close REF."))
    return old, new, _counted(office, every)


def _counted(office: Office, every: tuple[Count, ...]) -> Count:
    """The last count of everything, if it was closed lately."""
    days = int(office.rules.setting("handover_count_days"))
    whole = [one for one in every if one.closed and not one.taken.facts.scope]
    last = max(whole, key=lambda one: (_closed_on(one), one.taken.id), default=None)
    if last is None or (office.today - _closed_on(last)).days > days:
        told = tr("the last one on {day}", day=show_day(_closed_on(last))) if last else tr("there was none yet")
        why = tr("No count of everything was closed within {days} days; {told}.", days=days, told=told)
        raise Refused(tr("count"), why, tr("Count everything and close the count first: inspector stock begin REF."))
    return last


def _closed_on(count: Count) -> date:
    assert count.closed is not None  # only closed ones are asked
    return count.closed.on


def _check_same(page: Page, made: Backup) -> None:
    """Nothing may be written between the copy and the handing over: the copy is what passes on."""
    if page.head() != made.head:
        why = tr("Something was written while the copy was made.")
        raise Refused(tr("backup"), why, tr("Hand over again; the copy that was made stays where it is."))


def _protocol(
    office: Office, page: Page, people: tuple[Person, Person], count: Count, made: Backup, number: str
) -> HandoverProtocol:
    old, new = people
    return HandoverProtocol(
        imprint=imprint(office, page, tr("Handover protocol"), number),
        from_name=old.name,
        to_name=new.name,
        handed_on=_handed_on(page, made),
        mind=_mind(office, new),
        tables=tables(office, page, count),
    )


def _handed_on(page: Page, made: Backup) -> tuple[Fact, ...]:
    return (
        Fact(tr("Register of"), page.setting("club")),
        Fact(tr("Pieces ever booked in"), str(len(page.every_item()))),
        Fact(tr("Copy of the register"), made.file.name),
        Fact(tr("Size of the copy"), tr_n("{count} byte", "{count} bytes", made.size_bytes)),
        Fact(tr("Checksum of the copy (SHA-256)"), made.sha256),
        Fact(tr("Head of its ledger"), tr("{head}, {count} lines", head=made.head, count=made.line_count)),
    )


def _mind(office: Office, new: Person) -> tuple[str, ...]:
    """What a reader would otherwise take for granted."""
    said = [
        tr(
            "The copy was opened and found whole. It holds all that was entered before the handing over; the handing "
            "over itself is the line after."
        ),
        tr(
            "Signing key: none. The register has no signing key yet, so none is handed on, and nothing here is sealed "
            "by one. What binds are the two signatures and the head of the ledger above."
        ),
        tr(
            "Keep the copy on another disk than the register, and this sheet apart from both: whoever has it can prove "
            "with “inspector verify --against HEAD” that no earlier line was changed."
        ),
    ]
    today = office.today
    held = [one for one in new.competences if one.since <= today and (one.until is None or today <= one.until)]
    if not held:
        why = tr("{name} is not entered as competent to judge any kind of gear: somebody who is must inspect it.")
        said.append(why.format(name=new.name))
    return tuple(said)

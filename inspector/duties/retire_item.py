"""Print the retirement notice of a piece that was retired; print it again as it was said."""

from collections.abc import Sequence

from msgspec.structs import replace

from inspector.duties.look_up import open_item
from inspector.duties.notices_printed import NOTICE, printed_notice
from inspector.duties.office import Office, told_of
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.tell_damage import pin_wear, strap_damage
from inspector.duties.who import is_clubs
from inspector.duties.words_of_then import booked_facts
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.papers import RetirementNotice
from inspector.language import tr
from inspector.paper.page_style import PageSize
from inspector.paper.retirement_notice import retirement_notice
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.notice_words import destroy_words, never_again_words, replace_words, with_names_as_stated


def print_notice(office: Office, tag: str) -> Paper:
    """Print the notice. The first time it is numbered and kept; later the kept words are printed again.

    A piece whose retirement was struck and that was retired anew has another notice: the old one tells what was wrong.
    """
    found = open_item(office, tag)
    if found.verdict.outcome is not Outcome.RETIRE:
        why = tr("{tag} is not retired; its verdict is: {headline}", tag=tag, headline=found.explanation.headline)
        raise Refused(tr("retirement notice"), why, tr("A notice is printed only of a retired piece."))
    with office.book.page() as page:
        notice = printed_notice(page, found.dossier)
        if notice is None:
            standing = page.standing_retirements(found.dossier.item, found.dossier.strikes)
            notice = _new_notice(office, page, found, standing[0].id)
    return put_out(office, notice.imprint.number, retirement_notice(notice, PageSize(office.page), notice.system))


def print_notices(office: Office, tags: Sequence[str]) -> tuple[Paper, ...]:
    """Print the notices of several pieces, one after the other."""
    return tuple(print_notice(office, tag) for tag in told_of(office, tags))


def _new_notice(office: Office, page: Page, found: Judged, retirement: str) -> RetirementNotice:
    number = next_number(page, "R", NOTICE)
    notice = replace(_notice(office, page, found, number), retirement=retirement)
    page.add_document(number, NOTICE, office.today, found.dossier.item.id, notice)
    page.enter(
        "print notice", by=office.officer.id, at=office.now, facts={"number": number, "tag": found.dossier.item.tag}
    )
    return notice


def _notice(office: Office, page: Page, found: Judged, number: str) -> RetirementNotice:
    dossier, words = found.dossier, found.explanation
    addressed_to = "" if is_clubs(page, dossier.item) else dossier.item.facts.owner
    retired_by = tuple(one for one in words.reasons if one.outcome is Outcome.RETIRE)
    said_above = {tr("Tag"), tr("Kind"), tr("Owner")}  # the head of the notice has them
    return RetirementNotice(
        imprint=imprint(office, page, tr("Retirement notice"), number),
        tag=dossier.item.tag,
        kind_name=dossier.kind.name,
        family=dossier.kind.family,
        owner=dossier.item.facts.owner,
        piece=tuple(fact for fact in booked_facts(found) if fact.label not in said_above),
        plain=tr("This piece is not to be used again, for anything.") if addressed_to else words.plain,
        reasons=with_names_as_stated(retired_by, found.verdict, dossier),
        sums=words.sums,
        terms=words.terms,
        wall=found.verdict.wall,
        retired_on=dossier.retired_on or found.verdict.on,
        never_again=never_again_words(dossier.kind),
        destroy=destroy_words(dossier.kind),
        replace_by=replace_words(dossier, office.system),
        capacity=found.verdict.capacity,
        addressed_to=addressed_to,
        kind=dossier.kind.key,
        damage=strap_damage(dossier),
        pin=pin_wear(dossier),
        system=office.system,
    )

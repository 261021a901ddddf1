"""What the report on all the gear says first: the answer, what the club must decide, and what it must replace."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from inspector.duties.due_days import (
    LOOK_AHEAD_DAYS,
    competences_ending,
    is_lost,
    open_incidents,
    waits_to_be_destroyed,
)
from inspector.duties.lend import loans
from inspector.duties.report_facts import Found, count_words
from inspector.duties.report_tables import last_count
from inspector.duties.value_gear import value_list
from inspector.duties.what_falls_due import Held
from inspector.duties.who import is_clubs
from inspector.gear.needs import Ending
from inspector.gear.outcome import Outcome
from inspector.gear.papers import ProtocolTable
from inspector.gear.register_report import KindCount
from inspector.gear.stock_take import Counted
from inspector.language import show_day, tr, tr_n
from inspector.rulebook.notice_words import replace_words

_MOST_TAGS = 12
_BUY_AHEAD_DAYS = 365


def answer(found: Found, every: KindCount, due: ProtocolTable) -> tuple[str, ...]:
    """What everybody must take home: what may be used, what may not, what is late, what is gone."""
    may, may_not = every.fit + every.derate, every.hold + every.retire
    said = [
        tr("Of {all} {may} may be used, {may_not} may not.", all=count_words(every.total), may=may, may_not=may_not),
        tr_n("One of them is the club's own.", "{count} of them are the club's own.", _own(found)),
    ]
    late = len({line[0] for line in due.lines})
    said.append(
        tr_n("One piece waits for an inspection or reading that is due.",
             "{count} pieces wait for an inspection or reading that is due.", late)
        if late else tr("No inspection and no reading is due.")
    )  # fmt: skip
    lost = sum(is_lost(one.where) for one in found.pieces)
    if lost:
        said.append(tr_n("One piece is missing or stolen.", "{count} pieces are missing or stolen.", lost))
    retired = len(found.retired)
    since = show_day(found.since)
    said.append(
        tr_n("One was retired since {day}.", "{count} were retired since {day}.", retired, day=since)
        if retired else tr("None was retired since {day}.", day=since)
    )  # fmt: skip
    return tuple(said)


def _own(found: Found) -> int:
    return sum(is_clubs(found.page, one.item) for one in found.pieces if not is_lost(one.where))


def decide(found: Found) -> tuple[str, ...]:
    """What is open, a sentence each; nothing where nothing is."""
    return tuple(one for one in (*_of_pieces(found), *_of_register(found)) if one)


def _of_pieces(found: Found) -> Iterator[str]:
    pieces = found.pieces
    on_hold = [one for one in pieces if one.verdict.outcome is Outcome.HOLD and not is_lost(one.where)]
    destroy = [one for one in pieces if waits_to_be_destroyed(one.verdict.outcome, one.where)]
    lost = [one for one in pieces if is_lost(one.where)]
    if on_hold:
        yield tr("On hold until somebody settles it: {tags}.", tags=_tags(on_hold))
    if destroy:
        yield tr("Retired and not yet made unusable: {tags}.", tags=_tags(destroy))
    if lost:
        yield tr("Missing or stolen, look for it or write it off: {tags}.", tags=_tags(lost))
    late = [one for one in loans(found.office) if one.overdue_days(found.office.today)]
    if late:
        yield tr("On loan longer than agreed: {tags}.", tags=_listed([one.tag for one in late]))


def _of_register(found: Found) -> Iterator[str]:
    office, page = found.office, found.page
    if reports := [one.ref for one in open_incidents(page)]:
        yield tr("Reports of accidents or near misses still open: {refs}.", refs=_listed(reports))
    ending = competences_ending(page.people(), office.today + timedelta(days=LOOK_AHEAD_DAYS))
    if names := list(dict.fromkeys(one.name for one, _, _ in ending)):
        yield tr("Whose right to judge gear has ended or ends soon: {names}.", names=_listed(names))
    if unknown := value_list(office).total.unknown_tags:
        all_of = count_words(value_list(office).total.piece_count)
        yield tr("No value is written down of {count} of {all}: an insurer will ask.", count=len(unknown), all=all_of)
    last = last_count(found)
    days = int(office.rules.setting("handover_count_days"))
    if last is None:
        yield tr("The gear was never counted as a whole.")
    elif last.closed and (office.today - last.closed.on).days > days:
        yield tr("The gear was counted as a whole last on {day}.", day=show_day(last.closed.on))
    unseen = len(last.expected) - len(last.seen(Counted.PRESENT)) if last else 0
    if last and unseen:
        yield tr("Not seen in the count {ref}: {pieces}.", ref=last.ref, pieces=count_words(unseen))
    if office.rules.club:
        yield tr("The club's own limits are in force: “{title}”.", title=office.rules.club.title)


def buy(found: Found, ends: Sequence[Ending]) -> tuple[str, ...]:
    """What was or will be lost of the club's own gear, by what would replace it; what was bought nobody told."""
    return (*_retired(found), *_ending(found, ends))


def _retired(found: Found) -> Iterator[str]:
    by_advice: dict[str, list[str]] = defaultdict(list)
    for one in found.retired:
        if is_clubs(found.page, one.item):
            by_advice[replace_words(one, found.office.system)].append(one.item.tag)
    for advice, tags in by_advice.items():
        yield tr("{tags}, retired. {advice}", tags=_listed(sorted(tags)), advice=advice)


def _ending(found: Found, ends: Sequence[Ending]) -> Iterator[str]:
    """What time alone would retire within a year."""
    last = found.office.today + timedelta(days=_BUY_AHEAD_DAYS)
    club = {one.item.tag for one in found.pieces if is_clubs(found.page, one.item)}
    first: dict[str, date] = {}
    for one in ends:
        if one.tag in club and one.first <= last:
            first[one.tag] = min(one.first, first.get(one.tag, one.first))
    for tag, day in sorted(first.items(), key=lambda one: one[1]):
        if day <= found.office.today:
            yield tr("{tag}: its readings allow that time has ended it already; read it anew or replace it.", tag=tag)
        else:
            yield tr("{tag}: time alone may retire it from {day}; plan its replacement.", tag=tag, day=show_day(day))


def _tags(pieces: Sequence[Held]) -> str:
    return _listed([one.item.tag for one in pieces])


def _listed(texts: Sequence[str]) -> str:
    """All of them, or the first and how many others; the lists further on have each."""
    if len(texts) <= _MOST_TAGS:
        return ", ".join(texts)
    others = tr_n("and {count} other", "and {count} others", len(texts) - _MOST_TAGS)
    return f"{', '.join(texts[:_MOST_TAGS])} {others}"

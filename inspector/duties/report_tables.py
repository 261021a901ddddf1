"""The lists of the report on all the gear."""

from collections import defaultdict
from collections.abc import Iterator

from inspector.drawings.retire_line import sure_words
from inspector.duties.counts import Count, counts
from inspector.duties.evidence_paper import gravity_words
from inspector.duties.handover_lists import counted, holds, looks_due
from inspector.duties.keep_incident import is_closed
from inspector.duties.report_facts import Found, count_words, gone_since, named
from inspector.duties.tell_whereabouts import brief_words
from inspector.duties.value_gear import ValueLine, sum_words, value_list
from inspector.gear.dossier import Dossier
from inspector.gear.needs import Ending, EndsBy
from inspector.gear.papers import ProtocolTable
from inspector.language import show_day, tr

_FOUR = (0.12, 0.22, 0.16, 0.5)
_WORTH = (0.3, 0.16, 0.3, 0.24)
_INCIDENTS = (0.17, 0.2, 0.11, 0.52)
_BOOKED = (0.12, 0.22, 0.16, 0.5)


def tables(found: Found, ends: tuple[Ending, ...]) -> tuple[ProtocolTable, ...]:
    """Every list, in the order in which it is read."""
    return (
        looks_due(found.office, found.page),
        holds(found.office, found.page, found.items, found.where),
        _retired(found),
        _gone(found),
        _booked(found),
        _ends(ends),
        _worth(found),
        _incidents(found),
        _count(found),
    )


def _retired(found: Found) -> ProtocolTable:
    lines = [(one.item.tag, one.kind.name, _day(one), _why_and_where(found, one)) for one in found.retired]
    title = tr("Retired since {day}", day=show_day(found.since))
    columns = (tr("Tag"), tr("Piece"), tr("When"), tr("Why, and where it is"))
    return ProtocolTable(title, "", columns, _FOUR, tuple(lines), tr("No piece was retired since."))


def _day(one: Dossier) -> str:
    return show_day(one.retired_on) if one.retired_on else tr("day not known")


def _why_and_where(found: Found, one: Dossier) -> str:
    _, words = found.page.latest_verdict(one.item.id)
    where = brief_words(found.where[one.item.id], found.names)
    return tr("{why} ({where})", why=words.headline, where=where)


def _gone(found: Found) -> ProtocolTable:
    gone = sorted(gone_since(found), key=lambda one: found.where[one.id].since or found.since, reverse=True)
    lines = []
    for one in gone:
        where = found.where[one.id]
        lines.append((one.tag, named(found, one), show_day(where.since) if where.since else "–",
                      brief_words(where, found.names)))  # fmt: skip
    title = tr("Lost, sold, given back or made unusable since {day}", day=show_day(found.since))
    columns = (tr("Tag"), tr("Piece"), tr("Since"), tr("What became of it"))
    return ProtocolTable(title, "", columns, _FOUR, tuple(lines), tr("Nothing has gone since."))


def _booked(found: Found) -> ProtocolTable:
    new = sorted((one for one in found.items if one.booked_on >= found.since), key=lambda one: (one.booked_on, one.tag))
    lines = tuple((one.tag, named(found, one), show_day(one.booked_on), one.facts.owner or "–") for one in new)
    title = tr("Booked in since {day}", day=show_day(found.since))
    columns = (tr("Tag"), tr("Piece"), tr("When"), tr("Owner"))
    return ProtocolTable(title, "", columns, _BOOKED, lines, tr("No piece came in since."))


def _ends(ends: tuple[Ending, ...]) -> ProtocolTable:
    lines = tuple((one.tag, one.kind_name, show_day(one.on), _ends_by(one)) for one in ends)
    said = tr("From the verdicts as they stand. It is a forecast: a reading may bring the day nearer or put it off.")
    columns = (tr("Tag"), tr("Piece"), tr("Day"), tr("What ends it"))
    none = tr("Time alone retires no piece within these years, as far as the register can tell.")
    return ProtocolTable(tr("What time alone would retire"), said if lines else "", columns, _FOUR, lines, none)


def _ends_by(one: Ending) -> str:
    """What ends it, and how sure the day is."""
    if one.by is EndsBy.AGE:
        return tr("its age")
    said = (
        tr("its wall, by an estimate: no reading stands behind it")
        if one.estimated
        else tr("its wall, thinning as before")
    )
    return f"{said}. {sure}" if (sure := sure_words(one)) else said


def _worth(found: Found) -> ProtocolTable:
    """By owner; a sum with values that nobody knows says that it is too low."""
    every = value_list(found.office)
    by_owner: dict[str, list[ValueLine]] = defaultdict(list)
    for one in every.lines:
        by_owner[one.owner or tr("Club")].append(one)
    decimal = found.office.decimal
    known = bool(every.total.totals)  # of no value at all each owner's line would say the same
    lines = [_worth_line(owner, _together(some), decimal) for owner, some in sorted(by_owner.items()) if known]
    lines.append(_worth_line(tr("All together"), every.total, decimal))
    unknown = len(every.total.unknown_tags)
    said = tr("Every piece is counted that was not sold or made unusable, retired ones too.")
    if unknown:
        low = tr("Of {pieces} nobody wrote down a value: each sum that leaves some out is too low.")
        said = f"{said} {low.format(pieces=count_words(unknown))}"
    columns = (tr("Owner"), tr("Pieces"), tr("Value, as far as known"), tr("Value not known"))
    return ProtocolTable(tr("What it is worth"), said, columns, _WORTH, tuple(lines), tr("There is no piece."))


def _together(lines: list[ValueLine]) -> ValueLine:
    totals: dict[str, int] = defaultdict(int)
    for one in lines:
        for currency, amount in one.totals:
            totals[currency] += amount
    unknown = tuple(tag for one in lines for tag in one.unknown_tags)
    return ValueLine("", "", sum(one.piece_count for one in lines), unknown, tuple(sorted(totals.items())))


def _worth_line(owner: str, line: ValueLine, decimal: str) -> tuple[str, ...]:
    unknown = count_words(len(line.unknown_tags)) if line.unknown_tags else tr("none")
    return owner, str(line.piece_count), sum_words(line, decimal) or tr("not known"), unknown


def _incidents(found: Found) -> ProtocolTable:
    """Since the day, and older ones that are still open."""
    lines = tuple(_incident_lines(found))
    title = tr("Accidents and near misses since {day}, and those still open", day=show_day(found.since))
    columns = (tr("Report"), tr("What and when"), tr("State"), tr("Where, and what happened"))
    return ProtocolTable(title, "", columns, _INCIDENTS, lines, tr("None was reported."))


def _incident_lines(found: Found) -> Iterator[tuple[str, ...]]:
    for one in found.page.incidents():
        closed = is_closed(found.page, one)
        if one.facts.on >= found.since or not closed:
            when = tr("{what}, {day}", what=gravity_words(one.facts.gravity), day=show_day(one.facts.on))
            what = tr("{place}: {what}", place=one.facts.place, what=" ".join(one.facts.what.split()))
            yield one.ref, when, tr("closed") if closed else tr("open"), what


def last_count(found: Found) -> Count | None:
    """The last count of everything that was closed."""
    whole = [one for one in counts(found.page) if one.closed and not one.taken.facts.scope]
    return max(whole, key=lambda one: (one.closed.on if one.closed else found.since, one.taken.id), default=None)


def _count(found: Found) -> ProtocolTable:
    last = last_count(found)
    if last is None:
        none = tr("No count of everything was ever closed: nobody knows by a count whether all of it is there.")
        return ProtocolTable(tr("The count"), "", (), (), (), none)
    return counted(found.office, found.page, last, found.where)

"""Tell the life of a piece for a picture: each entry of its history in its row, from its booking to what is due."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.duties.tell_history import told_lines
from inspector.gear.custody import Hands, NewCustody
from inspector.gear.life import Life, LifeEntry, LifeSort
from inspector.gear.lists import HistoryRow
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr, tr_n
from inspector.register.history import HistoryLine
from inspector.register.rows import from_body

_SORTS = {
    "inspection": LifeSort.INSPECTION,
    "use": LifeSort.USE,
    "exposure": LifeSort.EXPOSURE,
    "custody": LifeSort.LENDING,
    "repair": LifeSort.WORK,
    "item_change": LifeSort.WORK,
    "fitting": LifeSort.PLACE,
    "whereabouts": LifeSort.PLACE,
    "destruction": LifeSort.PLACE,
    "quarantine": LifeSort.PLACE,
    "release": LifeSort.PLACE,
    "piece_call": LifeSort.WORD,
    "opinion": LifeSort.WORD,
    "strike": LifeSort.WORD,
    "attachment": LifeSort.FILE,
    "document": LifeSort.PAPER,
    "verdict": LifeSort.VERDICT,
}
Told = Sequence[tuple[HistoryLine, HistoryRow]]


def life_of(office: Office, tag: str) -> Life:
    """Everything that happened to a piece. Of verdicts those that said something else than the one before."""
    return life_told(office, tag, told_lines(office, tag))


def life_told(office: Office, tag: str, lines: Told) -> Life:
    """The same, of lines that were told already."""
    told = tuple(reversed(lines))
    with office.book.reading() as page:
        item = page.item(tag)
        verdict, _ = page.latest_verdict(item.id)
        outcomes = page.outcomes_of(item)
    booked = LifeEntry(item.booked_on, LifeSort.PLACE, tr("Booked in"))
    entries = [booked, *_entries(told, office.today), *_verdicts(told, outcomes)]
    due = None if verdict.outcome is Outcome.RETIRE else verdict.next_due
    return Life(item.booked_on, office.today, due, tuple(sorted(entries, key=lambda one: one.on)))


def _entries(told: Told, today: date) -> Iterator[LifeEntry]:
    """All but the verdicts; a loan stretches to the day on which it ended, or to today."""
    for number, (line, row) in enumerate(told):
        if line.what == "verdict":
            continue
        entry = LifeEntry(line.on, _SORTS[line.what], _says(row))
        if line.what == "custody":
            entry = _handed(entry, line, told[number + 1 :], today)
        yield entry


def _handed(entry: LifeEntry, line: HistoryLine, after: Told, today: date) -> LifeEntry:
    if from_body(line.body, NewCustody).what is not Hands.LENT:
        return replace(entry, back=True)
    ended = next((one.on for one, _ in after if one.what == "custody"), today)
    return replace(entry, until=max(ended, entry.on))


def _says(row: HistoryRow) -> str:
    said = tr("{what}: {text}", what=row.what, text=row.text)
    return tr("{said} ({by})", said=said, by=row.by) if row.by else said


def _verdicts(told: Told, outcomes: Mapping[str, Outcome]) -> Iterator[LifeEntry]:
    """One entry for each run of verdicts with the same outcome, in the words of its first."""
    run: list[tuple[HistoryLine, HistoryRow]] = []
    for line, row in told:
        if line.what != "verdict":
            continue
        if run and outcomes[run[0][0].key] is not outcomes[line.key]:
            yield _turned(run, outcomes)
            run = []
        run.append((line, row))
    if run:
        yield _turned(run, outcomes)


def _turned(run: Told, outcomes: Mapping[str, Outcome]) -> LifeEntry:
    line, row = run[0]
    says = _says(row)
    if len(run) > 1:
        last = show_day(run[-1][0].on)
        again = tr_n("said once more, on {day}", "said {count} times more, last on {day}", len(run) - 1, day=last)
        says = tr("{said} ({by})", said=says, by=again)
    return LifeEntry(line.on, LifeSort.VERDICT, says, outcome=outcomes[line.key])

"""Sentences of the ledger about what keeps the register safe: copies by the plan, an upgrade, a rescue, the clock."""

from datetime import datetime

from inspector.duties.ledger_line import Line, Sentence
from inspector.language import show_day, tr, tr_n


def _plan(line: Line) -> str:
    days = int(line.facts["days"])
    if not days:
        return tr("{who} wished that no copy is made by itself.", who=line.who)
    return tr_n(
        "{who} wished for a copy of the register every day.",
        "{who} wished for a copy of the register every {count} days.",
        days,
        who=line.who,
    )


def _upgraded(line: Line) -> str:
    file = line.text("file")
    return tr("The register was brought up to date for a newer program; the copy from before is {file}.", file=file)


def _rescued(line: Line) -> str:
    count = len(line.many("lost_rows"))
    lost = tr_n("one entry is lost", "{count} entries are lost", count)
    return tr(
        "{who} saved the register from the damaged file {file}: {lines} lines and {rows} entries are proved, {lost}.",
        who=line.who, file=line.text("file"), lines=line.facts["lines"], rows=line.facts["rows"], lost=lost,
    )  # fmt: skip


def _clock(line: Line) -> str:
    last = datetime.fromisoformat(line.text("last"))
    return tr(
        "{who} wrote down that the clock is right though the entry before was made at {time} on {day}: {why}",
        who=line.who, time=f"{last:%H:%M}", day=show_day(last.date()), why=line.text("why"),
    )  # fmt: skip


SENTENCES: dict[str, Sentence] = {
    "copy plan": _plan,
    "upgrade": _upgraded,
    "rescue": _rescued,
    "clock": _clock,
}

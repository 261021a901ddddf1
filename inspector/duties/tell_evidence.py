"""Tell that a piece became evidence of an incident, and who let it go."""

from collections.abc import Mapping

from inspector.gear.evidence import NewQuarantine, NewRelease
from inspector.gear.lists import HistoryRow
from inspector.language import tr
from inspector.register.history import HistoryLine
from inspector.register.rows import from_body


def evidence_row(line: HistoryLine, names: Mapping[str, str]) -> HistoryRow:
    """The row of a quarantine or a release; names: of people, by id."""
    if line.what == "quarantine":
        kept = from_body(line.body, NewQuarantine)
        text = tr("as found, of the incident {ref}", ref=kept.incident)
        if kept.broke:
            text = tr("{text}, in which it broke or let go", text=text)
        return HistoryRow(line.on, tr("Kept as evidence"), text, names.get(kept.by, kept.by))
    free = from_body(line.body, NewRelease)
    text = tr("from the incident {ref}, on hold until inspected: {why}", ref=free.incident, why=free.why)
    if free.whole:
        text = tr("{text} (its break is answered)", text=text)
    both = ", ".join(names.get(key, key) for key in (free.by, free.second))
    return HistoryRow(line.on, tr("Released from evidence"), text, both)

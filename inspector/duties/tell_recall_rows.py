"""Tell in a piece's history that it was called in, and what came of that."""

from collections.abc import Mapping

from inspector.duties.recall_words import sure_word
from inspector.gear.lists import HistoryRow
from inspector.gear.recall_notice import NewPieceCall, Step
from inspector.language import tr
from inspector.register.history import HistoryLine
from inspector.register.rows import from_body


def recall_row(line: HistoryLine, names: Mapping[str, str]) -> HistoryRow:
    """The row of a step under a recall; names: of people, by id."""
    step = from_body(line.body, NewPieceCall)
    said = {"ref": step.recall, "why": step.why}
    what, text = {
        Step.CALLED: (tr("Called in"), tr("by {ref}, {sure}: {why}", sure=sure_word(step.sure), **said)),
        Step.NOT_OF_IT: (tr("Not meant by a recall"), tr("{ref}: {why}", **said)),
        Step.WITHDRAWN: (tr("Recall withdrawn"), tr("{ref} was entered wrongly: {why}", **said)),
        Step.REMEDIED: (tr("Done as a recall asks"), tr("{ref}, on hold until inspected: {why}", **said)),
    }[step.step]
    return HistoryRow(line.on, what, text, names.get(step.by, step.by))

"""A cell that can be read in two ways: refused until the officer has said which way his list means."""

from inspector.gear.import_list import Asks, Column
from inspector.language import tr
from inspector.refused import Refused


class NotTold(Refused):
    """What a cell means hangs on an answer that nobody gave yet. about: which answer."""

    def __init__(self, column: Column, about: Asks, cell: str) -> None:
        why = {
            Asks.UNIT: tr("“{cell}” has no unit that is told apart.", cell=cell),
            Asks.BASIS: tr("It is not told whether “{cell}” is a WLL or an MBS.", cell=cell),
            Asks.DECIMAL: tr("“{cell}” can be read in more than one way.", cell=cell),
            Asks.ORDER: tr("“{cell}” can be more than one day.", cell=cell),
        }[about]
        super().__init__(column.heading, why, tr("Answer the question about this column."))
        self.about = about

"""What holds a part to the vehicle: bolts that are counted, or welds alone."""

from inspector.gear.item import BOLT_COUNT
from inspector.rulebook import observed
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity


def loss(case: Case, measure: str) -> Quantity:
    """How much of the new size is gone; a part that welds alone hold has no bolts that could be missing.

    Bolts that somebody has counted there all the same are not passed over: then nobody knows how many there should be.
    """
    asked = case.dossier.kind.measure(measure)
    counts_bolts = asked is not None and asked.compare_with == BOLT_COUNT
    if counts_bolts and case.dossier.item.is_welded_on and not observed.readings(case, measure):
        return NOT_APPLICABLE
    return observed.loss(case, measure)

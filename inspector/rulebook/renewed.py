"""Parts put in place of others: which readings speak of a part that is there no more.

A reading of the part before stops counting only once a competent person has seen all of the piece and read the new part
in an inspection made and entered after the swap. Until then the old readings stand: a swap by itself heals nothing.
"""

from inspector.gear.inspection import Inspection
from inspector.gear.repair import Repair
from inspector.rulebook.case import Case


def is_of_a_part_before(case: Case, inspection: Inspection, measure: str) -> bool:
    """Whether the inspection read this measure on a part that was swapped and whose successor was read in full."""
    swaps = [one for one in case.dossier.repairs if measure in one.facts.replaces]
    return any(_key(inspection) < (one.facts.on, one.id) and _is_read_anew(case, one, measure) for one in swaps)


def _key(inspection: Inspection) -> tuple[object, str]:
    return inspection.on, inspection.id


def _is_read_anew(case: Case, swap: Repair, measure: str) -> bool:
    """Order of entry counts as well as the day: a swap that is told late waits for an inspection made knowing of it."""
    last = case.looked_over.at
    if last is None or not _follows(last, swap):
        return False
    later = (one for one in case.thorough if _follows(one, swap))
    return any(reading.measure == measure for one in later for reading in one.facts.readings)


def _follows(inspection: Inspection, swap: Repair) -> bool:
    return inspection.on >= swap.facts.on and inspection.id > swap.id

"""What was seen and read last of a piece: to be shown beside a check or a field, never to be taken over into one."""

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, Reading


def last_answer(dossier: Dossier, check: str) -> tuple[Inspection, Answer] | None:
    """The inspection that graded a check last, and its grade; None where nobody ever did."""
    graded = ((one, answer) for one in dossier.inspections for answer in one.facts.answers if answer.check == check)
    return max(graded, key=lambda pair: (pair[0].on, pair[0].id), default=None)


def last_reading(dossier: Dossier, measure: str, point: str) -> tuple[Inspection, Reading] | None:
    """The inspection that read a measure at a place last, and its reading; None where nobody ever did."""
    read = readings_at(dossier, measure, point)
    return read[-1] if read else None


def readings_at(dossier: Dossier, measure: str, point: str) -> tuple[tuple[Inspection, Reading], ...]:
    """All readings of a measure at a place in order of day. Those of a part that was swapped since are left out."""
    swapped = max(
        (_when(one.facts.on, one.id) for one in dossier.repairs if measure in one.facts.replaces), default=None
    )
    found = (
        (one, reading)
        for one in dossier.inspections
        for reading in one.facts.readings
        if (reading.measure, reading.point) == (measure, point) and (swapped is None or _when(one.on, one.id) > swapped)
    )
    return tuple(sorted(found, key=lambda pair: _when(pair[0].on, pair[0].id)))


def _when(on: object, number: str) -> tuple[object, str]:
    return on, number

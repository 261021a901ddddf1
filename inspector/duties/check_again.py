"""What a member is asked once more before a check is kept: what is out of the ordinary, and what retires the piece."""

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.check_piece import check_seen
from inspector.duties.office import Office
from inspector.duties.plausible import Caution, cautions_of, note_with, reading_name
from inspector.duties.preview_verdict import failing, judged_with
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import InspectionKind, NewInspection
from inspector.gear.judged import Judged
from inspector.gear.kit_check import Seen
from inspector.gear.outcome import Outcome
from inspector.language import tr


class CheckAhead(Struct, frozen=True):
    """A check as it would be kept. judged: by it, on the dossier's day; odd: the readings to read again before."""

    judged: Judged
    odd: tuple[Caution, ...]


def check_ahead(office: Office, dossier: Dossier, seen: Seen) -> CheckAhead:
    """What the check would come to. Refused: what cannot be. Nothing is kept.

    A reading that retires the piece is read again whatever else it is like: a retirement is final.
    """
    check_seen(dossier.kind, seen)
    facts = NewInspection(
        office.today, InspectionKind.BEFORE_USE, office.officer.id, competent=False, answers=seen.answers,
        readings=seen.readings,
    )  # fmt: skip
    ahead = judged_with(office, dossier, facts)
    found = {(one.measure, one.point): one for one in cautions_of(office, dossier, facts)}
    for one in _retiring(ahead, dossier, facts):
        before = found.get((one.measure, one.point))
        found[(one.measure, one.point)] = replace(one, why=f"{before.why} {one.why}") if before else one
    return CheckAhead(ahead, tuple(found.values()))


def read_again(seen: Seen, odd: Sequence[Caution], confirmed: Sequence[Caution]) -> Seen:
    """The check, its note telling what was read again. Refused where something was not."""
    return replace(seen, note=note_with(seen.note.strip(), odd, confirmed))


def _retiring(ahead: Judged, dossier: Dossier, facts: NewInspection) -> Iterator[Caution]:
    """The readings by which the check would retire the piece."""
    if dossier.retired_on:
        return
    for finding, values in failing(ahead, facts):
        for one in values if finding.outcome is Outcome.RETIRE else ():
            if measure := dossier.kind.measure(one.observation):
                why = tr("Kept like this, it retires the piece for good.")
                yield Caution(measure.key, one.point, reading_name(measure, one.point), one.typed, why)

"""A judged piece: what a deed gives back."""

from dataclasses import dataclass

from inspector.gear.dossier import Dossier
from inspector.gear.verdict import Explanation, Verdict


@dataclass(frozen=True, slots=True)
class Judged:
    """All that a page needs of a judged piece."""

    dossier: Dossier
    verdict: Verdict
    explanation: Explanation

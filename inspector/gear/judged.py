"""A judged piece: what a deed gives back."""

from msgspec import Struct

from inspector.gear.dossier import Dossier
from inspector.gear.verdict import Explanation, Verdict


class Judged(Struct, frozen=True):
    """All that a page needs of a judged piece."""

    dossier: Dossier
    verdict: Verdict
    explanation: Explanation

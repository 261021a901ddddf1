"""The words of a stored verdict are those of the day it was judged, also in the language that was spoken then."""

from inspector.gear.judged import Judged
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.rulebook.piece_words import piece_facts


def words_of_then(judged: Judged) -> str:
    """One line for whoever reads the verdict in another language than its words have; else empty."""
    if _is_worded_as_now(judged):
        return ""
    day = show_day(judged.verdict.on)
    return tr("The words of the verdict are those of {day}, in the language spoken when it was judged.", day=day)


def booked_facts(judged: Judged) -> tuple[Fact, ...]:
    """What the piece was booked with, as the verdict told it; told anew where that was in another language."""
    return judged.explanation.piece if _is_worded_as_now(judged) else piece_facts(judged.dossier)


def _is_worded_as_now(judged: Judged) -> bool:
    """The name of the first fact, the tag, tells in which language the words were made."""
    return all(one.label == tr("Tag") for one in judged.explanation.piece[:1])

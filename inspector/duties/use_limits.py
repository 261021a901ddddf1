"""What a piece bears today and what it must not be used for, in a line each, for what is handed out with it."""

from inspector.duties.office import Office
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome, Purpose
from inspector.language import tr
from inspector.rulebook.judge import SAME_RATIO
from inspector.rulebook.words import listed, marked_words, purpose_word
from inspector.units import Dimension, show

_OPEN = {Outcome.FIT, Outcome.DERATE}


def is_reckoned(one: Judged) -> bool:
    """Whether what it bears now is the register's own reckoning: less than its marking, or no marking tells any."""
    capacity = one.verdict.capacity
    if capacity.now_n is None:
        return False
    return capacity.as_marked_n is None or capacity.now_n < capacity.as_marked_n * (1 - SAME_RATIO)


def rated_now(office: Office, one: Judged) -> str:
    """What it bears today, on the basis that the piece is marked in; empty where it cannot be told."""
    limit = _limit(office, one)
    return tr("{limit}, reckoned", limit=limit) if limit and is_reckoned(one) else limit


def marked_and_now(office: Office, one: Judged) -> str:
    """What it is marked with, and what it bears now where its marking does not tell that."""
    marked = marked_words(one.dossier.item)
    return tr("{marked}; now {now}", marked=marked, now=rated_now(office, one)) if is_reckoned(one) else marked


def marked_for_good(one: Judged) -> str:
    """What it is marked with, for what stays on the piece: that it bears less by now, but no figure that ages."""
    marked = marked_words(one.dossier.item)
    is_less = is_reckoned(one) and one.verdict.capacity.as_marked_n is not None
    return tr("{marked}; bears less now", marked=marked) if is_less else marked


def _limit(office: Office, one: Judged) -> str:
    capacity = one.verdict.capacity
    if capacity.now_n is None:
        return ""
    strength = show(capacity.now_n, Dimension.FORCE, office.system)
    if capacity.as_marked_n is None:  # a strength reckoned from sizes is no rating
        return tr("strength {strength}", strength=strength)
    if one.dossier.item.rating.basis is Basis.WLL and capacity.design_factor:
        return tr("WLL {limit}", limit=show(capacity.now_n / capacity.design_factor, Dimension.FORCE, office.system))
    return tr("MBS {strength}", strength=strength)


def bears_only(office: Office, one: Judged) -> str:
    """What a piece that may be used bears today where its marking does not tell that, a sentence; else empty."""
    if one.verdict.outcome not in _OPEN or not is_reckoned(one):
        return ""
    if one.verdict.capacity.as_marked_n is None:
        now = show(one.verdict.capacity.now_n or 0.0, Dimension.FORCE, office.system)
        return tr("Reckon its strength as {now}.", now=now)
    return tr("Bears only {limit} now, reckoned.", limit=_limit(office, one))


def only_for(one: Judged) -> str:
    """The purposes that are open to the piece; empty where none is."""
    uses = [purpose_word(purpose) for purpose in Purpose if purpose in _open_for(one)]
    return tr("Only for {uses}.", uses=listed(uses)) if uses else ""


def not_for(one: Judged) -> str:
    """Every purpose that is not open to the piece, because it is held or because the kind never serves it."""
    open_for = _open_for(one)
    if not open_for:
        return tr("Never use it again.") if one.verdict.outcome is Outcome.RETIRE else tr("Do not use it for anything.")
    closed = [purpose_word(purpose) for purpose in Purpose if purpose not in open_for]
    return tr("Not for {uses}.", uses=listed(closed)) if closed else ""


def _open_for(one: Judged) -> set[Purpose]:
    return {each.purpose for each in one.verdict.by_purpose if each.outcome in _OPEN}

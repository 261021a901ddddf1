"""What a piece bears today and what it must not be used for, in a line each, for what is handed out with it."""

from inspector.duties.office import Office
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome, Purpose
from inspector.language import tr
from inspector.rulebook.words import listed, purpose_word
from inspector.units import Dimension, show

_OPEN = {Outcome.FIT, Outcome.DERATE}


def rated_now(office: Office, one: Judged) -> str:
    """Today's rating on the basis that the piece is marked in; empty where it cannot be told."""
    capacity = one.verdict.capacity
    if capacity.now_n is None or capacity.as_marked_n is None:  # a strength reckoned from sizes is no rating
        return ""
    if one.dossier.item.rating.basis is Basis.WLL and capacity.design_factor:
        limit = show(capacity.now_n / capacity.design_factor, Dimension.FORCE, office.system)
        return tr("WLL {limit}", limit=limit)
    return tr("MBS {strength}", strength=show(capacity.now_n, Dimension.FORCE, office.system))


def bears_only(office: Office, one: Judged) -> str:
    """What a derated piece bears today, a sentence; empty for any other, and where nothing can be told."""
    if one.verdict.outcome is not Outcome.DERATE:
        return ""
    if now := rated_now(office, one):
        return tr("Bears only {limit} now.", limit=now)
    now_n = one.verdict.capacity.now_n
    strength = show(now_n, Dimension.FORCE, office.system) if now_n is not None else ""
    return tr("Reckon its strength as {now}.", now=strength) if strength else ""


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

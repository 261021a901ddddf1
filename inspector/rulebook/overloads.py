"""Whether a pull was more than a piece may take, so that it is looked at before it is used again."""

from collections.abc import Iterator

from msgspec import Struct

from inspector.gear.judged import Judged
from inspector.gear.kind import Basis
from inspector.language import tr
from inspector.mechanics.stretch import is_overload
from inspector.rulebook.heat import fibres_named
from inspector.rulebook.judge import SAME_RATIO
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, System, show

_FIBRE_SOURCE, _STEEL_SETTING = "fibre_limit_35", "overload_share_steel"
_FROM_MEMORY = "memory"


class Overload(Struct, frozen=True):
    """Whether a force was more than the piece may take, and why, with where the limit comes from."""

    is_over: bool
    why: str


class _Limit(Struct, frozen=True):
    """A limit in words, and whether the force passes it."""

    passed: bool
    name: str


def is_overloaded(judged: Judged, force_n: float, book: Rulebook, system: System = System.METRIC) -> Overload:
    """Hold a force against what the piece, as judged, may take. What nobody knows counts as overloaded.

    A working load limit, marked or what is left of it; for a winch its rated pull; for a fibre the lower published
    share of its strength now; for steel the pull of its first lasting set, and without a working load limit half its
    strength now. A kind that is never rated lies on the line and bears none of its pull.
    """
    capacity = judged.verdict.capacity
    if set(judged.dossier.kind.rated_by) == {Basis.UNRATED}:
        return Overload(False, tr("It bears no pull."))
    limits = (*_working_limits(judged, force_n, system), *_strength_limits(judged, force_n, book, system))
    force = show(force_n, Dimension.FORCE, system)
    if over := [one.name for one in limits if one.passed]:
        return Overload(True, tr("{force} is more than {limit}.", force=force, limit=over[0]))
    if capacity.now_n is None and not _is_rated_winch(judged):
        return Overload(True, tr("Nobody knows what it may take. {why}", why=capacity.why_unknown).strip())
    return Overload(False, tr("{force} is within {limits}.", force=force, limits="; ".join(one.name for one in limits)))


def _working_limits(judged: Judged, force_n: float, system: System) -> Iterator[_Limit]:
    """The working load limit as marked and what is left of it, or the rated pull of a winch."""
    rating, capacity = judged.dossier.item.rating, judged.verdict.capacity
    if rating.figure is None or rating.stated_on == _FROM_MEMORY:
        return
    if rating.basis is Basis.WLL:
        yield _above(force_n, rating.figure.si, tr("its working load limit"), system)
        if capacity.now_n is not None and capacity.design_factor:
            left_n = capacity.now_n / capacity.design_factor
            yield _above(force_n, left_n, tr("what is left of its working load limit"), system)
    elif rating.basis is Basis.LINE_PULL:
        yield _above(force_n, rating.figure.si, tr("its rated pull"), system)


def _strength_limits(judged: Judged, force_n: float, book: Rulebook, system: System) -> Iterator[_Limit]:
    """Limits that rest on the strength now."""
    capacity = judged.verdict.capacity
    if capacity.now_n is None:
        return
    if fibres_named(judged.dossier.kind.material):
        name = tr("what a fibre of its strength now bears unharmed ({source})", source=book.source_text(_FIBRE_SOURCE))
        yield _Limit(capacity.now_n <= 0 or is_overload(force_n, capacity.now_n), name)
        return
    if judged.dossier.item.rating.basis is not Basis.WLL:
        ratio = book.setting(_STEEL_SETTING)
        share = tr("{share} of its strength now (club setting)", share=show(ratio, Dimension.RATIO, system))
        yield _above(force_n, ratio * capacity.now_n, share, system)
    if capacity.first_set_n is not None:
        yield _above(force_n, capacity.first_set_n, tr("the pull that bends it for good"), system)


def _is_rated_winch(judged: Judged) -> bool:
    """Whether it is rated by the pull at which it stalls: then that is all it has to bear."""
    rating = judged.dossier.item.rating
    return rating.basis is Basis.LINE_PULL and rating.figure is not None and rating.stated_on != _FROM_MEMORY


def _above(force_n: float, limit_n: float, name: str, system: System) -> _Limit:
    shown = tr("{name}, {limit}", name=name, limit=show(limit_n, Dimension.FORCE, system))
    return _Limit(force_n > limit_n * (1 + SAME_RATIO), shown)

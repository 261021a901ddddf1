"""Whether a kinetic strap suits a vehicle: the published band of strength against the laden mass."""

from collections.abc import Sequence

from msgspec import Struct

from inspector.language import tr
from inspector.mechanics import fibre
from inspector.rulebook.judge import SAME_RATIO
from inspector.rulebook.load import Rulebook
from inspector.units import STANDARD_GRAVITY_M_PER_S2, Dimension, System, show

SUITS, TOO_STRONG, TOO_WEAK = "suits", "too strong", "too weak"


class Band(Struct, frozen=True):
    """The strengths in newtons that suit a vehicle as the lighter of a pair."""

    least_n: float
    most_n: float


def strap_band(book: Rulebook, gvm_kg: float) -> Band:
    """2 to 3 times the greatest laden weight of the lighter vehicle (settings strap_band_low, strap_band_high)."""
    weight_n = gvm_kg * STANDARD_GRAVITY_M_PER_S2
    return Band(weight_n * book.setting("strap_band_low"), weight_n * book.setting("strap_band_high"))


def band_words(band: Band, system: System) -> str:
    """The band as it prints."""
    least = show(band.least_n, Dimension.FORCE, system)
    most = show(band.most_n, Dimension.FORCE, system)
    return tr("{least} to {most}", least=least, most=most)


def strap_fit(book: Rulebook, gvm_kg: float, strength_n: float) -> str:
    """ "suits", "too strong" or "too weak" for a vehicle as the lighter of a pair; the ends of the band suit."""
    ratio = fibre.strap_band_ratio(strength_n, gvm_kg)
    if ratio > book.setting("strap_band_high") * (1 + SAME_RATIO):
        return TOO_STRONG
    return TOO_WEAK if ratio < book.setting("strap_band_low") * (1 - SAME_RATIO) else SUITS


def strap_words(book: Rulebook, gvm_kg: float, straps: Sequence[tuple[str, float]]) -> str:
    """Which straps do not suit the vehicle and why; nothing where all do. straps: tag and strength in newtons."""
    found: dict[str, list[str]] = {TOO_STRONG: [], TOO_WEAK: [], SUITS: []}
    for tag, strength_n in straps:
        ratio = fibre.strap_band_ratio(strength_n, gvm_kg)
        found[strap_fit(book, gvm_kg, strength_n)].append(tr("{tag} ({ratio} × GVM)", tag=tag, ratio=f"{ratio:.2f}"))
    said = {
        TOO_STRONG: tr("Too strong for it, stretches little and loads both attachments hard: {tags}."),
        TOO_WEAK: tr("Too weak for it: {tags}."),
    }
    return " ".join(said[fit].format(tags=", ".join(found[fit])) for fit in said if found[fit])

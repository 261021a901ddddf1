"""Whether a kinetic strap suits a vehicle: the published band of strength against the laden mass."""

from dataclasses import dataclass

from inspector.language import tr
from inspector.mechanics import fibre
from inspector.rulebook.load import Rulebook
from inspector.units import STANDARD_GRAVITY_M_PER_S2, Dimension, System, show


@dataclass(frozen=True, slots=True)
class Band:
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


def strap_warning(book: Rulebook, gvm_kg: float, tag: str, strength_n: float) -> str:
    """Why the strap does not suit the vehicle, or nothing where it does. Too strong matters as much as too weak."""
    ratio = fibre.strap_band_ratio(strength_n, gvm_kg)
    if ratio > book.setting("strap_band_high"):
        said = tr("{tag} is too strong for it ({ratio} × GVM): it stretches little and loads both attachments hard.")
    elif ratio < book.setting("strap_band_low"):
        said = tr("{tag} is too weak for it ({ratio} × GVM).")
    else:
        return ""
    return said.format(tag=tag, ratio=f"{ratio:.1f}")

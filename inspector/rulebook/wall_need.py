"""What must be left of a wall: the larger of the club's share of the new wall and what the hitch pin bears on."""

from inspector.gear.kind import Basis, kind_word
from inspector.gear.outcome import Purpose
from inspector.gear.verdict import Known
from inspector.language import tr
from inspector.mechanics import shear
from inspector.mechanics.checked import SAME_RATIO
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number
from inspector.units import STANDARD_GRAVITY_M_PER_S2, Dimension, show

_COUPLING_TEST_FACTOR = 1.5  # ADR 62/02 12.3.2: longitudinal force 1.5 g times the trailer's mass


def required_of(case: Case, nominal_m: float) -> tuple[float, str]:
    """What must be left: the larger of the club's share of the new wall and what the pin bears on; metres, and which.

    A wall that was too thin for its pull as new has not worn out: what it needs holds it (`needed_wall`), and it is
    used up at the club's share.
    """
    fraction = case.book.setting("required_wall_fraction")
    share = nominal_m * fraction
    needed = _needed(case)
    if needed is not None and share < needed[0] <= nominal_m * (1 + SAME_RATIO):
        return needed
    return share, tr("club setting: {share} of the wall as new", share=show(fraction, Dimension.RATIO))


def needed_wall(case: Case) -> Quantity:
    """The wall on which the hitch pin bears at the pull of the piece, in steel of which nobody knows the grade."""
    needed = _needed(case)
    return number(needed[0], Dimension.LENGTH, needed[1], Known.ESTIMATED) if needed else NOT_APPLICABLE


def _needed(case: Case) -> tuple[float, str] | None:
    """Metres, and what asks for them; None without a pin hole."""
    if case.dossier.item.size("pin_hole") is None:
        return None
    pull_n, pull_from = _pull(case)
    pin_m = case.book.setting("hitch_pin_diameter")
    yield_pa = case.book.setting("tube_yield_mpa") * 1e6
    steel = kind_word(case.dossier.kind.steel_grade)
    because = tr("bearing of the hitch pin at {pull}; steel {steel}", pull=pull_from, steel=steel)
    return shear.bearing_wall_needed_m(pull_n, pin_m, yield_pa, wall_count=2), because


def _pull(case: Case) -> tuple[float, str]:
    """The pull the pin hole must bear, in newtons: its rating, and the club's pull where it recovers or has none."""
    rating = case.dossier.item.rating
    reference = (case.book.setting("reference_pull"), tr("the club's reference pull"))
    if rating.figure is None or rating.basis is Basis.UNRATED:
        return reference
    rated = (rating.figure.si, tr("its marked rating"))
    if rating.basis is Basis.TOWED_MASS:
        pull = rating.figure.si * STANDARD_GRAVITY_M_PER_S2 * _COUPLING_TEST_FACTOR
        rated = (pull, tr("1.5 g times the rated trailer mass"))
    recovers = any(purpose is not Purpose.TOWING for purpose in case.purposes)
    return max(rated, reference) if recovers else rated

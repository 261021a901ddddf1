"""Strengths of what is bolted on: the bolts of a recovery point or tow bar, and the plate of a recovery point."""

from inspector.gear.item import BOLT_COUNT
from inspector.language import tr
from inspector.mechanics import fasteners, plate
from inspector.rulebook.case import Case
from inspector.rulebook.observed import measured
from inspector.rulebook.steel_parts import Found, Way, beyond_calliper_m, class_steel, found, unknown_steel

_COARSE_PITCH_M = {  # ISO metric coarse thread: diameter and pitch in metres
    0.006: 0.001,
    0.008: 0.00125,
    0.010: 0.0015,
    0.012: 0.00175,
    0.014: 0.002,
    0.016: 0.002,
    0.018: 0.0025,
    0.020: 0.0025,
    0.022: 0.0025,
    0.024: 0.003,
    0.030: 0.0035,
}
_CHARACTERISTIC = 1.0  # no partial factor inside
_SAME = 1 + 1e-9


def point_strengths(case: Case) -> Found:
    """The strengths of a recovery point."""
    bolts, eye = bolts_of(case), _plate(case)
    return Found(
        (*bolts.strengths, *eye.strengths), (*bolts.left_out, *eye.left_out), bolts.why_unknown or eye.why_unknown
    )


def bolts_of(case: Case) -> Found:
    """All bolts together in shear, each with its share; only the share left where their diameter is not known."""
    count = case.dossier.item.size(BOLT_COUNT)
    if count is None and case.dossier.item.is_welded_on:
        return Found(left_out=(tr("it is welded on: its welds are looked at, their strength is not reckoned"),))
    if count is None or count.si < 1:
        return Found(left_out=(tr("the bolts: their number was not written down"),))
    sound = measured(case, "bolts_sound", min).value
    now = sound.number if sound else None
    why = tr("Its sound bolts have not been counted.")
    return found([_shear(case)], count.si, None if now is None else max(now, 0.0), [], why)


def _shear(case: Case) -> Way[float]:
    bolt_n = _one_bolt_n(case)
    if bolt_n is None:
        because = tr("each bolt takes the same share; their diameter is not known")
        return Way("bolts", tr("the bolts"), because, "elementary_statics", lambda count: count, only_share=True)
    because = tr("each bolt takes the same share; {steel}", steel=class_steel(case, "bolt_class").because)
    return Way("bolts", tr("the bolts shear off"), because, "en_1993_1_8_bolts", lambda count: count * bolt_n)


def _one_bolt_n(case: Case) -> float | None:
    """One bolt cut through its thread; an odd diameter counts as the next thinner metric one."""
    diameter = case.dossier.item.size("bolt_diameter")
    listed = [one for one in _COARSE_PITCH_M if diameter and one <= diameter.si * _SAME]
    if not listed:
        return None
    steel = class_steel(case, "bolt_class")
    area_m2 = fasteners.bolt_stress_area_m2(listed[-1], _COARSE_PITCH_M[listed[-1]])
    return fasteners.bolt_shear_n(area_m2, steel.ultimate_pa, steel.grade, _CHARACTERISTIC)


def _plate(case: Case) -> Found:
    """The plate: how stiff it still is, and where its width and hole are known what it bears across them."""
    new, now = case.dossier.item.size("plate"), measured(case, "plate", min).value
    if new is None or new.si <= 0 or now is None or now.number is None:
        return Found(left_out=(tr("the plate: it was not measured"),))
    return found([_bends(), *_net(case)], new.si, max(beyond_calliper_m(case, now.number, new.si), 0.0), [])


def _bends() -> Way[float]:
    because = tr("only the share left is told; bending goes with the square of the thickness")
    part = tr("the plate in bending")
    return Way("plate_bends", part, because, "elementary_statics", lambda plate_m: plate_m**2, only_share=True)


def _net(case: Case) -> list[Way[float]]:
    width, hole = case.dossier.item.size("plate_width"), case.dossier.item.size("eye_hole")
    if width is None or hole is None or not 0 < hole.si < width.si:
        return []
    steel, wide_m, hole_m = unknown_steel(case), width.si, hole.si

    def breaks_n(plate_m: float) -> float:
        area_m2 = plate.plate_net_area_m2(wide_m, plate_m, hole_m)
        return plate.plate_net_tension_n(area_m2, steel.ultimate_pa, _CHARACTERISTIC)

    def yields_n(plate_m: float) -> float:
        return plate.plate_net_area_m2(wide_m, plate_m, hole_m) * steel.yield_pa

    part = tr("the plate pulls apart beside its hole")
    return [Way("plate_net", part, steel.because, "en_1993_1_8_bolts", breaks_n, yields_n)]

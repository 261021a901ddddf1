"""A plate with a round hole in tension: what its net section sees."""

from inspector.mechanics import checked


def hole_raiser_factor(hole_m: float, width_m: float) -> float:
    """How much the edge of a hole is stressed above the mean of the NET section; a page that says gross is wrong.

    Formula: Kt = 3 - 3.13 r + 3.66 r^2 - 1.53 r^3, r = d / W
    Valid: W > 0, 0 <= d < W
    Source: roark_hole

    >>> round(hole_raiser_factor(0.0159, 0.060), 3)
    2.399
    """
    checked.positive(width_m=width_m)
    checked.between(0, width_m * (1 - 1e-12), hole_m=hole_m)
    r = hole_m / width_m
    return 3 - 3.13 * r + 3.66 * r**2 - 1.53 * r**3


def plate_net_area_m2(width_m: float, thickness_m: float, hole_m: float) -> float:
    """Area of a plate across its hole.

    Formula: Anet = (W - d) t
    Valid: W > 0, t >= 0, 0 <= d <= W
    Source: elementary_statics

    >>> round(plate_net_area_m2(0.060, 0.010, 0.0159) * 1e6)
    441
    """
    checked.positive(width_m=width_m)
    checked.at_least(0, thickness_m=thickness_m)
    checked.between(0, width_m, hole_m=hole_m)
    return (width_m - hole_m) * thickness_m


def plate_net_tension_n(net_area_m2: float, ultimate_pa: float, gamma_m2_factor: float = 1.25) -> float:
    """Tension that a plate carries across its hole; the raiser counts for cracks, not for this.

    Formula: Nu,Rd = 0.9 Anet fu / gM2
    Valid: Anet >= 0, fu > 0, gM2 >= 1
    Source: en_1993_1_8_bolts – the clause is that of EN 1993-1-1, from memory

    >>> round(plate_net_tension_n(441e-6, 360e6) / 1e3)
    114
    """
    checked.at_least(0, net_area_m2=net_area_m2)
    checked.positive(ultimate_pa=ultimate_pa)
    checked.at_least(1, gamma_m2_factor=gamma_m2_factor)
    return 0.9 * net_area_m2 * ultimate_pa / gamma_m2_factor


def plate_net_inertia_m4(width_m: float, thickness_m: float, hole_m: float) -> float:
    """Second moment of a plate across its middle hole, bent in its own plane.

    Formula: I = t (W^3 - d^3) / 12
    Valid: W > 0, t >= 0, 0 <= d <= W
    Source: elementary_statics

    >>> round(plate_net_inertia_m4(0.060, 0.010, 0.0159) * 1e12)
    176650
    """
    plate_net_area_m2(width_m, thickness_m, hole_m)  # the same range
    return thickness_m * (width_m**3 - hole_m**3) / 12


def plate_net_modulus_m3(width_m: float, thickness_m: float, hole_m: float) -> float:
    """Elastic modulus of a plate across its middle hole, bent in its own plane.

    Formula: Wel = 2 I / W
    Valid: W > 0, t >= 0, 0 <= d <= W
    Source: elementary_statics

    >>> round(plate_net_modulus_m3(0.060, 0.010, 0.0159) * 1e9)
    5888
    """
    return 2 * plate_net_inertia_m4(width_m, thickness_m, hole_m) / width_m


def plate_net_plastic_m3(width_m: float, thickness_m: float, hole_m: float) -> float:
    """Plastic modulus of a plate across its middle hole, bent in its own plane.

    Formula: Wpl = t (W^2 - d^2) / 4
    Valid: W > 0, t >= 0, 0 <= d <= W
    Source: elementary_statics

    >>> round(plate_net_plastic_m3(0.060, 0.010, 0.0159) * 1e9)
    8368
    """
    plate_net_area_m2(width_m, thickness_m, hole_m)  # the same range
    return thickness_m * (width_m**2 - hole_m**2) / 4

"""Areas and moduli of square tubes and round bars, whole and worn.

The tube is a cold-formed square one whose wall thins evenly from inside: outer faces and outer corner radius ro stay,
the inner radius is ri = max(ro - t, 0). New cold-formed tubes up to 6 mm have ro = 2t, so ri = t (EN 10219-2). A
hot-finished tube (EN 10210-2: ro = 1.5t, ri = t) has a little more steel in its corners than this shape.
"""

import math

from inspector.mechanics import checked


def square_tube_area_m2(side_m: float, wall_m: float, outer_radius_m: float) -> float:
    """Area of a square tube with rounded corners, its wall thinned evenly from inside.

    Formula: A = 4 t (B - t) - (4 - pi)(ro^2 - ri^2), ri = max(ro - t, 0)
    Valid: B > 0, 0 <= t <= B/2, 0 <= ro <= B/2
    Source: en_10219_2

    >>> round(square_tube_area_m2(0.060, 0.004, 0.008) * 1e4, 2)
    8.55
    """
    inner_radius_m = _inner_radius_m(side_m, wall_m, outer_radius_m)
    return 4 * wall_m * (side_m - wall_m) - (4 - math.pi) * (outer_radius_m**2 - inner_radius_m**2)


def square_tube_inertia_m4(side_m: float, wall_m: float, outer_radius_m: float) -> float:
    """Second moment of area of a square tube with rounded corners.

    Formula: I = I(B, ro) - I(B - 2t, ri), I(B, r) = B^4/12 - 4 (Ig + Ag hg^2) of a rounded square
    Valid: B > 0, 0 <= t <= B/2, 0 <= ro <= B/2
    Source: en_10219_2

    >>> round(square_tube_inertia_m4(0.060, 0.004, 0.008) * 1e8, 1)
    43.6
    """
    inner_radius_m = _inner_radius_m(side_m, wall_m, outer_radius_m)
    return _rounded_square_inertia_m4(side_m, outer_radius_m) - _rounded_square_inertia_m4(
        side_m - 2 * wall_m, inner_radius_m
    )


def square_tube_modulus_m3(side_m: float, wall_m: float, outer_radius_m: float) -> float:
    """Elastic modulus of a square tube with rounded corners.

    Formula: Wel = 2 I / B
    Valid: B > 0, 0 <= t <= B/2, 0 <= ro <= B/2
    Source: en_10219_2

    >>> round(square_tube_modulus_m3(0.060, 0.004, 0.008) * 1e6, 1)
    14.5
    """
    return 2 * square_tube_inertia_m4(side_m, wall_m, outer_radius_m) / side_m


def square_tube_net_area_m2(side_m: float, wall_m: float, outer_radius_m: float, hole_m: float) -> float:
    """Area of a square tube less a pin hole through two opposite walls.

    Formula: Anet = A - 2 d0 t
    Valid: as for the area, and 0 <= d0 <= B - 2 ro: the hole lies in the flat of the face
    Source: elementary_statics

    >>> round(square_tube_net_area_m2(0.060, 0.004, 0.008, 0.0159) * 1e4, 2)
    7.28
    """
    area_m2 = square_tube_area_m2(side_m, wall_m, outer_radius_m)
    checked.between(0, side_m - 2 * outer_radius_m, hole_m=hole_m)
    return area_m2 - 2 * hole_m * wall_m


def two_walls_net_area_m2(width_m: float, wall_m: float, hole_m: float) -> float:
    """Area of the two pierced walls of a tube alone.

    Formula: Anet = 2 t (w - d0), w their flat width
    Valid: w > 0, t >= 0, 0 <= d0 <= w
    Source: elementary_statics

    >>> round(two_walls_net_area_m2(0.044, 0.004, 0.016) * 1e6)
    224
    """
    checked.positive(width_m=width_m)
    checked.at_least(0, wall_m=wall_m)
    checked.between(0, width_m, hole_m=hole_m)
    return 2 * wall_m * (width_m - hole_m)


def round_elastic_modulus_m3(diameter_m: float) -> float:
    """Elastic modulus of a round bar.

    Formula: Wel = pi d^3 / 32
    Valid: d > 0
    Source: elementary_statics

    >>> round(round_elastic_modulus_m3(0.022) * 1e9)
    1045
    """
    checked.positive(diameter_m=diameter_m)
    return math.pi * diameter_m**3 / 32


def round_plastic_modulus_m3(diameter_m: float) -> float:
    """Plastic modulus of a round bar.

    Formula: Wpl = d^3 / 6
    Valid: d > 0
    Source: elementary_statics

    >>> round(round_plastic_modulus_m3(0.022) * 1e9)
    1775
    """
    checked.positive(diameter_m=diameter_m)
    return diameter_m**3 / 6


def round_inertia_m4(diameter_m: float) -> float:
    """Second moment of area of a round bar.

    Formula: I = pi d^4 / 64
    Valid: d > 0
    Source: elementary_statics

    >>> round(round_inertia_m4(0.022) * 1e12)
    11499
    """
    return round_elastic_modulus_m3(diameter_m) * diameter_m / 2


def round_area_loss_ratio(diameter_loss_ratio: float) -> float:
    """Share of a round bar's area that is gone with a share of its diameter.

    Formula: 1 - (1 - x)^2
    Valid: 0 <= x <= 1
    Source: elementary_statics

    >>> round(round_area_loss_ratio(0.10), 3)
    0.19
    """
    checked.between(0, 1, diameter_loss_ratio=diameter_loss_ratio)
    return 1 - (1 - diameter_loss_ratio) ** 2


def round_modulus_loss_ratio(diameter_loss_ratio: float) -> float:
    """Share of a round bar's bending modulus that is gone with a share of its diameter.

    Formula: 1 - (1 - x)^3
    Valid: 0 <= x <= 1
    Source: elementary_statics

    >>> round(round_modulus_loss_ratio(0.10), 3)
    0.271
    """
    checked.between(0, 1, diameter_loss_ratio=diameter_loss_ratio)
    return 1 - (1 - diameter_loss_ratio) ** 3


def _inner_radius_m(side_m: float, wall_m: float, outer_radius_m: float) -> float:
    checked.positive(side_m=side_m)
    checked.between(0, side_m / 2, wall_m=wall_m, outer_radius_m=outer_radius_m)
    return max(outer_radius_m - wall_m, 0.0)


def _rounded_square_inertia_m4(side_m: float, radius_m: float) -> float:
    """A full square less what rounding takes off its four corners, about its middle axis."""
    spandrel_m2 = (1 - math.pi / 4) * radius_m**2
    lever_m = side_m / 2 - radius_m * (10 - 3 * math.pi) / (12 - 3 * math.pi)
    own_m4 = (1 / 3 - math.pi / 16 - 1 / (3 * (12 - 3 * math.pi))) * radius_m**4
    return side_m**4 / 12 - 4 * (own_m4 + spandrel_m2 * lever_m**2)

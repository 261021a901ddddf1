"""Square and rectangular tubes whose faces have rusted by different amounts: one face thin moves the middle axis.

The outside stays, corners rounded on it; the inside is a sharp rectangle between the walls, on the safe side of the
steel that fills its corners. For an evenly thinned square with its inner rounding see `sections`.
"""

import math

from inspector.mechanics import checked


def faced_tube_area_m2(
    width_m: float, height_m: float, radius_m: float, sides_m: float, top_m: float, bottom_m: float
) -> float:
    """Area of a tube with two like sides and its own top and bottom wall.

    Formula: A = B H - (4 - pi) r^2 - (B - 2 ts)(H - tt - tb)
    Valid: B, H > 0; 0 <= r <= min(B, H)/2; walls > 0 that leave an inside
    Source: elementary_statics

    >>> round(faced_tube_area_m2(0.060, 0.060, 0.0, 0.004, 0.004, 0.004) * 1e4, 2)
    8.96
    """
    _check(width_m, height_m, radius_m, sides_m, top_m, bottom_m)
    inside_m2 = (width_m - 2 * sides_m) * (height_m - top_m - bottom_m)
    return width_m * height_m - (4 - math.pi) * radius_m**2 - inside_m2


def faced_tube_centroid_m(
    width_m: float, height_m: float, radius_m: float, sides_m: float, top_m: float, bottom_m: float
) -> float:
    """Height of the middle axis over the bottom face.

    Formula: yc = (Ao H/2 - Ai (tb + (H - tt - tb)/2)) / A
    Valid: as for the area
    Source: elementary_statics

    >>> round(faced_tube_centroid_m(0.060, 0.060, 0.0, 0.004, 0.004, 0.002) * 1e3, 2)
    33.55
    """
    area_m2 = faced_tube_area_m2(width_m, height_m, radius_m, sides_m, top_m, bottom_m)
    inside_m = height_m - top_m - bottom_m
    inside_m2 = (width_m - 2 * sides_m) * inside_m
    outside_m2 = area_m2 + inside_m2
    return (outside_m2 * height_m / 2 - inside_m2 * (bottom_m + inside_m / 2)) / area_m2


def faced_tube_inertia_m4(
    width_m: float, height_m: float, radius_m: float, sides_m: float, top_m: float, bottom_m: float
) -> float:
    """Second moment of area about the middle axis that lies flat.

    Formula: I = Io + Ao (H/2 - yc)^2 - Ii - Ai (yi - yc)^2
    Valid: as for the area
    Source: elementary_statics

    >>> round(faced_tube_inertia_m4(0.060, 0.060, 0.0, 0.004, 0.004, 0.004) * 1e8, 2)
    47.07
    """
    centroid_m = faced_tube_centroid_m(width_m, height_m, radius_m, sides_m, top_m, bottom_m)
    inside_m, inner_width_m = height_m - top_m - bottom_m, width_m - 2 * sides_m
    outside_m2 = width_m * height_m - (4 - math.pi) * radius_m**2
    outside = _rounded_inertia_m4(width_m, height_m, radius_m) + outside_m2 * (height_m / 2 - centroid_m) ** 2
    shift_m = bottom_m + inside_m / 2 - centroid_m
    return outside - inner_width_m * inside_m**3 / 12 - inner_width_m * inside_m * shift_m**2


def faced_tube_modulus_m3(
    width_m: float, height_m: float, radius_m: float, sides_m: float, top_m: float, bottom_m: float
) -> float:
    """Elastic modulus, at the face that lies farther from the middle axis.

    Formula: Wel = I / max(yc, H - yc)
    Valid: as for the area
    Source: elementary_statics

    >>> round(faced_tube_modulus_m3(0.060, 0.060, 0.0, 0.004, 0.004, 0.002) * 1e6, 1)
    11.5
    """
    walls = (width_m, height_m, radius_m, sides_m, top_m, bottom_m)
    centroid_m = faced_tube_centroid_m(*walls)
    return faced_tube_inertia_m4(*walls) / max(centroid_m, height_m - centroid_m)


def tube_plastic_modulus_m3(side_m: float, wall_m: float, outer_radius_m: float) -> float:
    """Plastic modulus of a square tube with rounded corners, its wall thinned evenly.

    Formula: Wpl = B^3/4 - 4 Ag hg - [(B - 2t)^3/4 - 4 Ax hx], ri = max(ro - t, 0)
    Valid: B > 0, 0 <= t <= B/2, 0 <= ro <= B/2
    Source: en_10219_2

    >>> round(tube_plastic_modulus_m3(0.060, 0.004, 0.008) * 1e6, 1)
    17.6
    """
    checked.positive(side_m=side_m)
    checked.between(0, side_m / 2, wall_m=wall_m, outer_radius_m=outer_radius_m)
    inner_m = side_m - 2 * wall_m
    return _half_first_moments_m3(side_m, outer_radius_m) - _half_first_moments_m3(
        inner_m, max(outer_radius_m - wall_m, 0.0)
    )


def _half_first_moments_m3(side_m: float, radius_m: float) -> float:
    spandrel_m2 = (1 - math.pi / 4) * radius_m**2
    lever_m = side_m / 2 - radius_m * (10 - 3 * math.pi) / (12 - 3 * math.pi)
    return side_m**3 / 4 - 4 * spandrel_m2 * lever_m


def _rounded_inertia_m4(width_m: float, height_m: float, radius_m: float) -> float:
    spandrel_m2 = (1 - math.pi / 4) * radius_m**2
    lever_m = height_m / 2 - radius_m * (10 - 3 * math.pi) / (12 - 3 * math.pi)
    own_m4 = (1 / 3 - math.pi / 16 - 1 / (3 * (12 - 3 * math.pi))) * radius_m**4
    return width_m * height_m**3 / 12 - 4 * (own_m4 + spandrel_m2 * lever_m**2)


def _check(width_m: float, height_m: float, radius_m: float, sides_m: float, top_m: float, bottom_m: float) -> None:
    checked.positive(width_m=width_m, height_m=height_m, sides_m=sides_m, top_m=top_m, bottom_m=bottom_m)
    checked.between(0, min(width_m, height_m) / 2, radius_m=radius_m)
    checked.positive(inner_width_m=width_m - 2 * sides_m, inner_height_m=height_m - top_m - bottom_m)

"""Square and rectangular tubes whose faces have rusted by different amounts: one face thin moves the middle axis.

The outside stays, its corners rounded to ro. The inside is a rectangle between the walls, its corners rounded to ri;
left out, ri is 0 and the tube counts a little weaker than it is. A wall thinned evenly from inside keeps ri = ro - t.
New tubes: cold-formed to 6 mm ro = 2 t, hot-finished ro = 1.5 t, both ri = t. Bending is about the axis that lies flat;
for the other axis swap width and height.
"""

import math

from inspector.mechanics import checked

_HAIR = 1e-12


def faced_tube_area_m2(
    width_m: float,
    height_m: float,
    radius_m: float,
    sides_m: float,
    top_m: float,
    bottom_m: float,
    inner_radius_m: float = 0.0,
) -> float:
    """Area of a tube with two like sides and its own top and bottom wall.

    Formula: A = B H - (B - 2 ts)(H - tt - tb) - (4 - pi)(ro^2 - ri^2)
    Valid: B, H > 0; 0 <= ro <= min(B, H)/2; walls > 0 that leave an inside and steel in each corner; 0 <= ri that fits
    Source: en_10219_2

    >>> round(faced_tube_area_m2(0.060, 0.060, 0.0, 0.004, 0.004, 0.004) * 1e4, 2)
    8.96
    """
    _check(width_m, height_m, radius_m, sides_m, top_m, bottom_m, inner_radius_m)
    inside_m2 = _rounded_area_m2(width_m - 2 * sides_m, height_m - top_m - bottom_m, inner_radius_m)
    return _rounded_area_m2(width_m, height_m, radius_m) - inside_m2


def faced_tube_centroid_m(
    width_m: float,
    height_m: float,
    radius_m: float,
    sides_m: float,
    top_m: float,
    bottom_m: float,
    inner_radius_m: float = 0.0,
) -> float:
    """Height of the middle axis over the bottom face.

    Formula: yc = (Ao H/2 - Ai yi) / A, yi = tb + (H - tt - tb)/2
    Valid: as for the area
    Source: elementary_statics

    >>> round(faced_tube_centroid_m(0.060, 0.060, 0.0, 0.004, 0.004, 0.002) * 1e3, 2)
    33.55
    """
    area_m2 = faced_tube_area_m2(width_m, height_m, radius_m, sides_m, top_m, bottom_m, inner_radius_m)
    outside_m2 = _rounded_area_m2(width_m, height_m, radius_m)
    return (outside_m2 * height_m / 2 - (outside_m2 - area_m2) * (height_m + bottom_m - top_m) / 2) / area_m2


def faced_tube_inertia_m4(
    width_m: float,
    height_m: float,
    radius_m: float,
    sides_m: float,
    top_m: float,
    bottom_m: float,
    inner_radius_m: float = 0.0,
) -> float:
    """Second moment of area about the middle axis that lies flat.

    Formula: I = Io + Ao (H/2 - yc)^2 - Ii - Ai (yi - yc)^2, I(B, H, r) = B H^3/12 - 4 (Ig + Ag hg^2)
    Valid: as for the area
    Source: en_10219_2

    >>> round(faced_tube_inertia_m4(0.060, 0.060, 0.0, 0.004, 0.004, 0.004) * 1e8, 2)
    47.07
    """
    walls = (width_m, height_m, radius_m, sides_m, top_m, bottom_m, inner_radius_m)
    centroid_m = faced_tube_centroid_m(*walls)
    inner = (width_m - 2 * sides_m, height_m - top_m - bottom_m, inner_radius_m)
    outer = (width_m, height_m, radius_m)
    outside_m4 = _rounded_inertia_m4(*outer) + _rounded_area_m2(*outer) * (height_m / 2 - centroid_m) ** 2
    shift_m = (height_m + bottom_m - top_m) / 2 - centroid_m
    return outside_m4 - _rounded_inertia_m4(*inner) - _rounded_area_m2(*inner) * shift_m**2


def faced_tube_modulus_m3(
    width_m: float,
    height_m: float,
    radius_m: float,
    sides_m: float,
    top_m: float,
    bottom_m: float,
    inner_radius_m: float = 0.0,
) -> float:
    """Elastic modulus, at the face that lies farther from the middle axis.

    Formula: Wel = I / max(yc, H - yc)
    Valid: as for the area
    Source: elementary_statics

    >>> round(faced_tube_modulus_m3(0.060, 0.060, 0.0, 0.004, 0.004, 0.002) * 1e6, 1)
    11.5
    """
    walls = (width_m, height_m, radius_m, sides_m, top_m, bottom_m, inner_radius_m)
    centroid_m = faced_tube_centroid_m(*walls)
    return faced_tube_inertia_m4(*walls) / max(centroid_m, height_m - centroid_m)


def faced_tube_plastic_axis_m(
    width_m: float,
    height_m: float,
    radius_m: float,
    sides_m: float,
    top_m: float,
    bottom_m: float,
    inner_radius_m: float = 0.0,
) -> float:
    """Height over the bottom face of the axis that halves the area, about which the tube bends when it has all yielded.

    Formula: yp = (A/2 + 2 Ago - 2 Agi - bi tb) / (2 ts), Ag = (1 - pi/4) r^2, bi = B - 2 ts
    Valid: as for the area, and yp in the straight of the sides: faces that differ not too much
    Source: elementary_statics

    >>> round(faced_tube_plastic_axis_m(0.060, 0.060, 0.008, 0.004, 0.004, 0.002, 0.004) * 1e3, 2)
    36.5
    """
    half_m2 = faced_tube_area_m2(width_m, height_m, radius_m, sides_m, top_m, bottom_m, inner_radius_m) / 2
    corners_m2 = 2 * (_spandrel_m2(radius_m) - _spandrel_m2(inner_radius_m))
    axis_m = (half_m2 + corners_m2 - (width_m - 2 * sides_m) * bottom_m) / (2 * sides_m)
    least_m = max(radius_m, bottom_m + inner_radius_m)
    checked.between(least_m, height_m - max(radius_m, top_m + inner_radius_m), plastic_axis_m=axis_m)
    return axis_m


def faced_tube_plastic_modulus_m3(
    width_m: float,
    height_m: float,
    radius_m: float,
    sides_m: float,
    top_m: float,
    bottom_m: float,
    inner_radius_m: float = 0.0,
) -> float:
    """Plastic modulus of a tube with two like sides and its own top and bottom wall.

    Formula: Wpl = S(yp, tb) + S(H - yp, tt), S(y, t) = B y^2/2 - 2 Ago (y - go) - bi (y-t)^2/2 + 2 Agi (y - t - gi)
    Valid: as for the plastic axis
    Source: elementary_statics

    >>> round(faced_tube_plastic_modulus_m3(0.060, 0.060, 0.008, 0.004, 0.004, 0.002, 0.004) * 1e6, 2)
    14.51
    """
    axis_m = faced_tube_plastic_axis_m(width_m, height_m, radius_m, sides_m, top_m, bottom_m, inner_radius_m)
    inner_m = width_m - 2 * sides_m

    def moment_m3(reach_m: float, wall_m: float) -> float:
        outside_m3 = _half_moment_m3(width_m, reach_m, radius_m)
        return outside_m3 - _half_moment_m3(inner_m, reach_m - wall_m, inner_radius_m)

    return moment_m3(axis_m, bottom_m) + moment_m3(height_m - axis_m, top_m)


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
    inner_m, inner_radius_m = side_m - 2 * wall_m, max(outer_radius_m - wall_m, 0.0)
    outside_m3 = _half_moment_m3(side_m, side_m / 2, outer_radius_m)
    return 2 * (outside_m3 - _half_moment_m3(inner_m, inner_m / 2, inner_radius_m))


def _spandrel_m2(radius_m: float) -> float:
    """What rounding takes off one corner."""
    return (1 - math.pi / 4) * radius_m**2


def _spandrel_depth_m(radius_m: float) -> float:
    """How far the middle of that bit lies below the face."""
    return radius_m * (10 - 3 * math.pi) / (12 - 3 * math.pi)


def _rounded_area_m2(width_m: float, height_m: float, radius_m: float) -> float:
    return width_m * height_m - 4 * _spandrel_m2(radius_m)


def _rounded_inertia_m4(width_m: float, height_m: float, radius_m: float) -> float:
    lever_m = height_m / 2 - _spandrel_depth_m(radius_m)
    own_m4 = (1 / 3 - math.pi / 16 - 1 / (3 * (12 - 3 * math.pi))) * radius_m**4
    return width_m * height_m**3 / 12 - 4 * (own_m4 + _spandrel_m2(radius_m) * lever_m**2)


def _half_moment_m3(width_m: float, reach_m: float, radius_m: float) -> float:
    """First moment about its upper edge of a rectangle whose two lower corners are rounded."""
    return width_m * reach_m**2 / 2 - 2 * _spandrel_m2(radius_m) * (reach_m - _spandrel_depth_m(radius_m))


def _check(
    width_m: float, height_m: float, radius_m: float, sides_m: float, top_m: float, bottom_m: float, inner_m: float
) -> None:
    """The walls leave an inside, the roundings fit, and no inner corner breaks through an outer one."""
    checked.positive(width_m=width_m, height_m=height_m, sides_m=sides_m, top_m=top_m, bottom_m=bottom_m)
    checked.between(0, min(width_m, height_m) / 2, radius_m=radius_m)
    inside_m = (width_m - 2 * sides_m, height_m - top_m - bottom_m)
    checked.positive(inner_width_m=inside_m[0], inner_height_m=inside_m[1])
    checked.between(0, min(inside_m) / 2 * (1 + checked.SAME_RATIO), inner_radius_m=inner_m)
    aside_m = max(radius_m - sides_m - inner_m, 0.0)
    for face_m in (top_m, bottom_m):
        corner_m = radius_m - inner_m - math.hypot(aside_m, max(radius_m - face_m - inner_m, 0.0))
        touches = radius_m > min(sides_m, face_m) + inner_m
        checked.at_least(0, corner_wall_m=corner_m + _HAIR if touches else 0.0)

"""What overload leaves behind in a strap or rope: lasting stretch, harm past a share of its strength; and a cut."""

from enum import StrEnum

from inspector.mechanics import checked


class StretchLimit(StrEnum):
    """How much lasting stretch: the end of bedding in, its lower end, or a bad overload."""

    BEDDED_LEAST = "bedded least"
    BEDDED_MOST = "bedded most"
    BADLY_OVERLOADED = "badly overloaded"


class OverloadLimit(StrEnum):
    """The share of its strength from which a line is harmed: of the least fibre, or of natural fibre line."""

    LEAST_FIBRE = "least fibre"
    NATURAL_FIBRE = "natural fibre"


_STRETCH_RATIO: dict[StretchLimit, float] = {
    StretchLimit.BEDDED_LEAST: 0.04,
    StretchLimit.BEDDED_MOST: 0.06,
    StretchLimit.BADLY_OVERLOADED: 0.10,
}
_OVERLOAD_RATIO: dict[OverloadLimit, float] = {OverloadLimit.LEAST_FIBRE: 0.35, OverloadLimit.NATURAL_FIBRE: 0.75}
_CUT_TESTED_RATIO = 0.10
_CUT_LOSS_FACTOR = 1.25  # 8,000 to 7,000 for one edge, to 6,000 for both


def permanent_stretch_ratio(marked_m: float, now_m: float) -> float:
    """Lasting stretch of a strap or rope between its marks, unloaded; one that reads shorter has not stretched (0).

    Formula: (L - L0) / L0
    Valid: L0 > 0, L > 0
    Source: nylon_stretch, tb_55_appendix_c

    >>> round(permanent_stretch_ratio(9.0, 9.45), 3)
    0.05
    """
    checked.positive(marked_m=marked_m, now_m=now_m)
    return max(now_m / marked_m - 1, 0.0)


def is_overstretched(stretch_ratio: float, limit: StretchLimit = StretchLimit.BEDDED_MOST) -> bool:
    """Whether the lasting stretch is more than bedding in explains; the limit itself is still bedding in.

    Formula: stretch > 0.06; by name > 0.04, or >= 0.10 for a bad overload
    Valid: stretch >= 0; nylon
    Source: nylon_stretch

    >>> is_overstretched(0.05), is_overstretched(0.07)
    (False, True)
    """
    checked.at_least(0, stretch_ratio=stretch_ratio)
    limit = StretchLimit(limit)
    widened = -checked.SAME_RATIO if limit is StretchLimit.BADLY_OVERLOADED else checked.SAME_RATIO
    return stretch_ratio > _STRETCH_RATIO[limit] * (1 + widened)


def is_overload(peak_n: float, breaking_n: float, limit: OverloadLimit = OverloadLimit.LEAST_FIBRE) -> bool:
    """Whether a load has harmed a line for good, so that it is to be looked at closely.

    Formula: F > 0.35 MBS; by name F > 0.75 MBS
    Valid: F >= 0, MBS > 0
    Source: fibre_limit_35, natural_line_75 – “as low as 35 %”, so the lower figure stands; 75 % is for natural fibre

    >>> is_overload(40e3, 80e3), is_overload(40e3, 80e3, OverloadLimit.NATURAL_FIBRE)
    (True, False)
    """
    checked.at_least(0, peak_n=peak_n)
    checked.positive(breaking_n=breaking_n)
    return peak_n > _OVERLOAD_RATIO[OverloadLimit(limit)] * breaking_n * (1 + checked.SAME_RATIO)


def cut_edge_loss_ratio(cut_m: float, width_m: float, edge_count: int) -> float:
    """Share of its strength that webbing loses by a cut into one edge, or as deep a cut into both.

    Formula: loss = 1.25 x edges x cut / width
    Valid: cut >= 0 and at most 10 % of the width, width > 0, 1 or 2 edges
    Source: cut_edge_test – through the two points printed: one edge 8,000 to about 7,000 kg, both 6,000; deeper cuts
        were not tried

    >>> round(cut_edge_loss_ratio(0.005, 0.050, 1), 4), round(cut_edge_loss_ratio(0.005, 0.050, 2), 4)
    (0.125, 0.25)
    """
    checked.positive(width_m=width_m)
    checked.between(0, _CUT_TESTED_RATIO * width_m * (1 + checked.SAME_RATIO), cut_m=cut_m)
    checked.whole(edge_count=edge_count)
    checked.between(1, 2, edge_count=edge_count)
    return _CUT_LOSS_FACTOR * edge_count * cut_m / width_m


def is_webbing_cut_out(cut_m: float, width_m: float, at_edge: bool) -> bool:
    """Whether a cut puts webbing out of use: any cut at the edge, or yarns broken over more than a tenth of its width.

    Formula: at the edge: cut > 0; elsewhere: cut / width > 0.10
    Valid: 0 <= cut <= width, width > 0
    Source: dguv_215_320 – US rules take webbing out of use for any cut at all

    >>> is_webbing_cut_out(0.004, 0.050, at_edge=False), is_webbing_cut_out(0.004, 0.050, at_edge=True)
    (False, True)
    """
    checked.positive(width_m=width_m)
    checked.between(0, width_m, cut_m=cut_m)
    return cut_m > (0.0 if at_edge else _CUT_TESTED_RATIO * width_m * (1 + checked.SAME_RATIO))

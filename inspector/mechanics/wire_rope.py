"""Steel wire rope: how many broken wires end it, how thin it may get, and what heat does to its core."""

from enum import StrEnum

from inspector.mechanics import checked
from inspector.mechanics.wear import worn_ratio


class Lay(StrEnum):
    """How the wires are laid in the strands."""

    ORDINARY = "ordinary"
    LANG = "lang"


class Spooling(StrEnum):
    """Where the counted length works: over sheaves or in one layer, or on a drum of many layers."""

    ONE_LAYER = "one layer"
    MANY_LAYERS = "many layers"


class CountedLength(StrEnum):
    """Over which length the broken wires are counted, in rope diameters."""

    SIX_DIAMETERS = "six diameters"
    THIRTY_DIAMETERS = "thirty diameters"


class LayRule(StrEnum):
    """Whose count over one lay length: of a winch, or of a sling."""

    US_WINCHES = "us winches"
    US_SLINGS = "us slings"


class BreakSpread(StrEnum):
    """Where the broken wires of one lay length lie."""

    ANYWHERE = "anywhere"
    ONE_STRAND = "one strand"


class RopeCore(StrEnum):
    """What is inside the rope."""

    FIBRE = "fibre"
    STEEL = "steel"
    ROTATION_RESISTANT = "rotation resistant"


class ThinRule(StrEnum):
    """Whose limit of lost diameter: the strictest of all, or one by name."""

    STRICTEST = "strictest"
    ASME_SLINGS = "asme slings"
    MINES = "mines"
    ISO_4309 = "iso 4309"


# most load-bearing outer wires of the row; over 6 d and 30 d: ordinary lay, Lang lay, many layers
_ISO_4309: tuple[tuple[int, tuple[int, int], tuple[int, int], tuple[int, int]], ...] = (
    (50, (2, 4), (1, 2), (4, 8)),
    (75, (3, 6), (2, 3), (6, 12)),
    (100, (4, 8), (2, 4), (8, 16)),
    (120, (5, 10), (2, 5), (10, 19)),  # a copy prints 20
    (140, (6, 11), (3, 6), (11, 22)),
    (160, (6, 13), (3, 6), (12, 26)),  # a copy prints 13
    (180, (7, 14), (4, 7), (14, 28)),  # a copy prints 29
    (200, (8, 16), (4, 8), (16, 32)),
    (220, (9, 18), (4, 9), (18, 36)),
    (240, (10, 19), (5, 10), (20, 38)),
    (260, (10, 21), (5, 10), (20, 42)),
    (280, (11, 22), (6, 11), (22, 44)),
    (300, (12, 24), (6, 12), (24, 48)),
)
_LAY_COUNT: dict[LayRule, dict[BreakSpread, int]] = {
    LayRule.US_WINCHES: {BreakSpread.ANYWHERE: 6, BreakSpread.ONE_STRAND: 3},
    LayRule.US_SLINGS: {BreakSpread.ANYWHERE: 10, BreakSpread.ONE_STRAND: 5},
}
_ISO_THIN_RATIO: dict[RopeCore, float] = {
    RopeCore.FIBRE: 0.10,
    RopeCore.STEEL: 0.075,
    RopeCore.ROTATION_RESISTANT: 0.05,
}


def discard_wires_count(
    outer_wires_count: int,
    counted: CountedLength,
    lay: Lay = Lay.LANG,
    spooling: Spooling = Spooling.ONE_LAYER,
    seale: bool = False,
) -> int:
    """How many broken wires that can be seen end a wire rope, over 6 or 30 rope diameters.

    Formula: table by the number of load-bearing wires in the outer strands; a Seale rope with up to 19 wires a strand
        two rows above its own
    Valid: 1 to 300 wires; one layer: class M1 to M4 or unknown; Lang lay and one layer, the strictest, unless named
    Source: iso_4309_table – copies differ in three cells; the smaller number stands

    >>> discard_wires_count(42, CountedLength.SIX_DIAMETERS, Lay.ORDINARY)
    2
    >>> discard_wires_count(114, CountedLength.SIX_DIAMETERS, Lay.ORDINARY, seale=True)
    3
    """
    checked.whole(outer_wires_count=outer_wires_count)
    checked.between(1, _ISO_4309[-1][0], outer_wires_count=outer_wires_count)
    at = next(at for at, row in enumerate(_ISO_4309) if outer_wires_count <= row[0])
    _, ordinary, lang, many = _ISO_4309[max(at - 2, 0) if seale else at]
    one_layer = ordinary if Lay(lay) is Lay.ORDINARY else lang
    counts = many if Spooling(spooling) is Spooling.MANY_LAYERS else one_layer
    return counts[list(CountedLength).index(CountedLength(counted))]


def lay_discard_wires_count(spread: BreakSpread, rule: LayRule = LayRule.US_WINCHES) -> int:
    """How many broken wires in one lay length end a wire rope under US rules, anywhere or in one strand.

    Formula: winches 6 and 3; slings 10 and 5
    Valid: the rules listed
    Source: asme_b30_7_wires, osha_1910_184_wires – the winch rule is the stricter and stands

    >>> lay_discard_wires_count(BreakSpread.ANYWHERE), lay_discard_wires_count(BreakSpread.ONE_STRAND)
    (6, 3)
    """
    return _LAY_COUNT[LayRule(rule)][BreakSpread(spread)]


def is_broken_by_share(broken_count: int, wires_count: int) -> bool:
    """Whether a wire rope is out of use by the share of all its wires broken within 8 diameters.

    Formula: broken / all wires > 0.10
    Valid: 0 <= broken <= all wires, at least 1 wire
    Source: osha_1926_251_wires

    >>> is_broken_by_share(11, 114), is_broken_by_share(12, 114)
    (False, True)
    """
    return _share_ratio(broken_count, wires_count) > 0.10 * (1 + checked.SAME_RATIO)


def is_mine_rope_broken(broken_count: int, wires_count: int, strand_broken_count: int, strand_wires_count: int) -> bool:
    """Whether a wire rope is out of use by its broken wires in one lay length, by the rule of US mines.

    Formula: broken / all wires > 0.05, or broken in a strand / wires of the strand > 0.15
    Valid: counts without filler wires; 0 <= broken <= wires, at least 1 wire
    Source: cfr_56_19024

    >>> is_mine_rope_broken(5, 114, 2, 19), is_mine_rope_broken(6, 114, 2, 19), is_mine_rope_broken(3, 114, 3, 19)
    (False, True, True)
    """
    rope_ratio = _share_ratio(broken_count, wires_count)
    strand_ratio = _share_ratio(strand_broken_count, strand_wires_count)
    return rope_ratio > 0.05 * (1 + checked.SAME_RATIO) or strand_ratio > 0.15 * (1 + checked.SAME_RATIO)


def is_outer_wire_worn(original_m: float, now_m: float) -> bool:
    """Whether the outer wires of a wire rope are worn so far that it is out of use.

    Formula: (d0 - d) / d0 > 1/3
    Valid: d0 > 0, d >= 0, of one wire
    Source: cfr_56_19024, osha_1910_184_wires – for slings the third itself counts; for mines more than a third

    >>> is_outer_wire_worn(0.9e-3, 0.7e-3), is_outer_wire_worn(0.9e-3, 0.5e-3)
    (False, True)
    """
    return worn_ratio(original_m, now_m) >= 1 / 3 * (1 - checked.SAME_RATIO)


def thin_limit_ratio(core: RopeCore, rule: ThinRule = ThinRule.STRICTEST) -> float:
    """How much of its diameter a wire rope may lose; the strictest published limit unless one is named.

    Formula: 0.05 (ASME slings, local); by name 0.06 (US mines), 0.10, 0.075, 0.05 by core (ISO 4309)
    Valid: the names listed
    Source: wire_diameter, cfr_56_19024, iso_4309_diameter – the ISO figures from memory

    >>> thin_limit_ratio(RopeCore.FIBRE), thin_limit_ratio(RopeCore.FIBRE, ThinRule.ISO_4309)
    (0.05, 0.1)
    """
    by_core_ratio = _ISO_THIN_RATIO[RopeCore(core)]
    limits = {ThinRule.ASME_SLINGS: 0.05, ThinRule.MINES: 0.06, ThinRule.ISO_4309: by_core_ratio}
    return limits.get(ThinRule(rule), min(limits.values()))


def is_rope_too_thin(reference_m: float, now_m: float, core: RopeCore, rule: ThinRule = ThinRule.STRICTEST) -> bool:
    """Whether a wire rope has lost so much of its diameter that it is out of use.

    Formula: (d0 - d) / d0 > limit; ISO 4309 >= limit
    Valid: d0 > 0, d >= 0; d0 nominal (ASME) or measured when the rope was new (mines, ISO)
    Source: wire_diameter, cfr_56_19024, iso_4309_diameter

    >>> is_rope_too_thin(0.010, 0.0094, RopeCore.STEEL), is_rope_too_thin(0.010, 0.0096, RopeCore.STEEL)
    (True, False)
    """
    limit_ratio = thin_limit_ratio(core, rule)
    widened = -checked.SAME_RATIO if ThinRule(rule) is ThinRule.ISO_4309 else checked.SAME_RATIO
    return worn_ratio(reference_m, now_m) > limit_ratio * (1 + widened)


def is_fibre_core_spoilt(temperature_c: float) -> bool:
    """Whether a wire rope with a fibre core has been so hot that it is out of use for good.

    Formula: T > 93 C (200 F)
    Valid: above absolute zero
    Source: wac_29425_core

    >>> is_fibre_core_spoilt(93), is_fibre_core_spoilt(100)
    (False, True)
    """
    checked.at_least(-273.15, temperature_c=temperature_c)
    return temperature_c > 93


def _share_ratio(broken_count: int, wires_count: int) -> float:
    checked.whole(wires_count=wires_count)
    checked.between(0, wires_count, broken_count=broken_count)
    checked.whole(broken_count_plus_one=broken_count + 1)
    return broken_count / wires_count

"""Blocks in the winch line: how many parts, what sheaves cost, what each line and the block must bear."""

import math

from inspector.mechanics import checked, rating

SHEAVE_LOSS_RATIO = 0.10  # of the load, for each sheave
STALL_LINE_FACTOR = 2.0  # parts on the line against the stall pull
STALL_BLOCK_FACTOR = 2.0  # block, its connections and anchor, a further
BLOCK_SHACKLE_FACTOR = 2.0


def mechanical_advantage_count(load_n: float, capacity_n: float) -> int:
    """How many line parts the load asks for before sheaves take their share, rounded up.

    Formula: MA = LR / P, rounded up
    Valid: LR > 0; P > 0
    Source: army_recovery_steps

    >>> mechanical_advantage_count(90e3, 40e3)
    3
    """
    checked.positive(load_n=load_n, capacity_n=capacity_n)
    return max(math.ceil(load_n / capacity_n * (1 - checked.SAME_RATIO)), 1)


def tackle_resistance_n(load_n: float, sheave_count: int) -> float:
    """What the sheaves of a tackle take.

    Formula: TR = 0.10 LR s
    Valid: LR >= 0; s a whole number >= 0, in word problems MA - 1
    Source: army_recovery_steps, seabee_tackle – safe while a sheave's efficiency is 0.90 or better

    >>> round(tackle_resistance_n(90e3, 2), 6)
    18000.0
    """
    checked.at_least(0, load_n=load_n)
    _sheaves(sheave_count=sheave_count)
    return SHEAVE_LOSS_RATIO * load_n * sheave_count


def tackle_total_n(load_n: float, sheave_count: int) -> float:
    """What the winch has to overcome: load and sheaves.

    Formula: TOT = LR + TR = LR (1 + 0.10 s)
    Valid: LR >= 0; s a whole number >= 0
    Source: army_recovery_steps

    >>> round(tackle_total_n(90e3, 2), 6)
    108000.0
    """
    return load_n + tackle_resistance_n(load_n, sheave_count)


def fall_line_n(load_n: float, part_count: int, sheave_count: int) -> float:
    """The pull in the line that comes off the winch.

    Formula: FL = TOT / MA = LR (1 + 0.10 s) / MA
    Valid: LR >= 0; MA a whole number >= 1; s a whole number >= 0
    Source: army_recovery_steps – this against the winch's capacity is the check that decides

    >>> round(fall_line_n(100e3, 3, 2), 6)
    40000.0
    """
    checked.whole(part_count=part_count)
    return tackle_total_n(load_n, sheave_count) / part_count


def parts_needed_count(load_n: float, capacity_n: float) -> int:
    """The least number of line parts with which the winch pulls load and sheaves.

    Formula: the least MA with LR (1 + 0.10 (MA - 1)) / MA < P, that is MA > 0.9 LR / (P - 0.1 LR)
    Valid: LR > 0; P > 0.1 LR, below which no number of sheaves helps
    Source: army_recovery_steps – raise MA and repeat until the fall line lies below the capacity

    >>> parts_needed_count(90e3, 40e3), mechanical_advantage_count(99e3, 50e3), parts_needed_count(99e3, 50e3)
    (3, 2, 3)
    """
    checked.positive(load_n=load_n, capacity_n=capacity_n)
    spare_n = capacity_n - SHEAVE_LOSS_RATIO * load_n
    if spare_n <= load_n * checked.SAME_RATIO:
        raise ValueError(f"capacity_n must be above a tenth of load_n, not {capacity_n!r}")
    return math.floor((1 - SHEAVE_LOSS_RATIO) * load_n / spare_n * (1 + checked.SAME_RATIO)) + 1


def dead_line_n(fall_line_n: float, line_count: int) -> float:
    """What an anchor strap, block or shackle holds: the sum of the line parts that pull on it.

    Formula: DL = FL n
    Valid: FL >= 0; n a whole number >= 1
    Source: army_recovery_steps – the vehicle's own point takes MA x FL: the winch gains, the points do not

    >>> dead_line_n(40e3, 2)
    80000.0
    """
    checked.at_least(0, fall_line_n=fall_line_n)
    checked.whole(line_count=line_count)
    return fall_line_n * line_count


def geometric_fall_line_n(
    load_n: float, part_count: int, efficiency_ratio: float, extra_sheave_count: int = 0
) -> float:
    """The pull in the winch line when each sheave passes on a fixed share of the pull.

    Formula: FL = LR / (q^e (1 + q + q^2 + ... MA terms)); q = 1 / K, K the sheave factor; e sheaves that only lead the
        line away
    Valid: LR >= 0; MA a whole number >= 1; 0 < q <= 1; e a whole number >= 0
    Source: wire_rope_users_manual – K = 1.09 for plain, 1.04 for rolling bearings

    >>> round(geometric_fall_line_n(100e3, 2, 0.90))
    52632
    """
    checked.at_least(0, load_n=load_n)
    checked.whole(part_count=part_count)
    checked.positive(efficiency_ratio=efficiency_ratio)
    checked.between(0, 1, efficiency_ratio=efficiency_ratio)
    _sheaves(extra_sheave_count=extra_sheave_count)
    parts = math.fsum(efficiency_ratio**part for part in range(int(part_count)))
    return load_n / (efficiency_ratio**extra_sheave_count * parts)


def block_load_n(line_pull_n: float, angle_rad: float) -> float:
    """What a block that turns the line, its strap and its anchor bear.

    Formula: B = P 2 cos(A / 2), A between the two lines, 0 when they lie parallel
    Valid: P >= 0; 0 <= A <= 180 degrees
    Source: block_tables – three tables agree; one prints 1.95 at 30 degrees, which is wrong (1.93)

    >>> round(block_load_n(40e3, math.radians(90)))
    56569
    """
    checked.at_least(0, line_pull_n=line_pull_n)
    return line_pull_n * rating.block_load_factor(angle_rad)


def block_shackle_rating_n(block_rating_n: float) -> float:
    """The least marked load of the shackle that holds a single-sheave block.

    Formula: SWL_shackle >= 2 SWL_block
    Valid: SWL >= 0; a block with one sheave, lines parallel
    Source: lloyds_block_shackle

    >>> block_shackle_rating_n(40e3)
    80000.0
    """
    checked.at_least(0, block_rating_n=block_rating_n)
    return BLOCK_SHACKLE_FACTOR * block_rating_n


def stall_line_strength_n(stall_pull_n: float) -> float:
    """The least failing load of every part on the winch line.

    Formula: F >= 2 P_stall
    Valid: P >= 0, the pull at which the winch stalls, not its duty
    Source: winch_stall_alert

    >>> stall_line_strength_n(50e3)
    100000.0
    """
    checked.at_least(0, stall_pull_n=stall_pull_n)
    return STALL_LINE_FACTOR * stall_pull_n


def stall_block_strength_n(stall_pull_n: float) -> float:
    """The least failing load of a block in the winch line, of its connections and its anchor.

    Formula: F >= 2 x 2 P_stall
    Valid: P >= 0, the pull at which the winch stalls
    Source: winch_stall_alert

    >>> stall_block_strength_n(50e3)
    200000.0
    """
    return STALL_BLOCK_FACTOR * stall_line_strength_n(stall_pull_n)


def _sheaves(**counts: int) -> None:
    for name, count in counts.items():
        if count != 0:
            checked.whole(**{name: count})

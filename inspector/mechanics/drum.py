"""What is left of a winch's pull as rope piles up on the drum. The rated pull holds on the first layer only."""

from enum import StrEnum

from inspector.mechanics import checked

ARMY_LAYER_RATIO = 0.10
TRADE_LAYER_RATIO = 0.15
FULL_DRUM_RATIO = 0.5


class LayerRule(StrEnum):
    """Whose rule for the loss of each layer."""

    TRADE = "trade"
    ARMY = "army"


def layer_pull_n(first_layer_n: float, layer_count: int, rule: LayerRule = LayerRule.TRADE) -> float:
    """The winch's pull while the rope winds on to its n-th layer.

    Formula: trade P_n = P_1 0.85^(n - 1); army P_n = P_1 / (1 + 0.10 (n - 1))
    Valid: P_1 >= 0; n a whole number >= 1
    Source: winch_layers_trade, tm_9_2320_279_layers – the trade says 10 to 15 % less for each layer: the lower pull
        stands; the army form fits its table within 0.3 %, on the high side

    >>> round(layer_pull_n(40e3, 3)), round(layer_pull_n(40e3, 3, LayerRule.ARMY))
    (28900, 33333)
    """
    checked.at_least(0, first_layer_n=first_layer_n)
    checked.whole(layer_count=layer_count)
    above = layer_count - 1
    if rule is LayerRule.ARMY:
        return first_layer_n / (1 + ARMY_LAYER_RATIO * above)
    return float(first_layer_n * (1 - TRADE_LAYER_RATIO) ** above)


def drum_layer_pull_n(first_layer_n: float, drum_m: float, rope_m: float, layer_count: int) -> float:
    """The winch's pull on the n-th layer from the sizes of drum and rope: the torque stays, the arm grows.

    Formula: P_n = P_1 (D + d) / (D + (2 n - 1) d)
    Valid: P_1 >= 0; D, d > 0; n a whole number >= 1; layers stacked square, not bedded into one another
    Source: balance_of_forces

    >>> round(drum_layer_pull_n(40e3, 0.064, 0.009, 3))
    26789
    """
    checked.at_least(0, first_layer_n=first_layer_n)
    checked.positive(drum_m=drum_m, rope_m=rope_m)
    checked.whole(layer_count=layer_count)
    return first_layer_n * (drum_m + rope_m) / (drum_m + (2 * layer_count - 1) * rope_m)


def full_drum_pull_n(first_layer_n: float) -> float:
    """What to count on when hardly any line is out and the drum is full.

    Formula: P >= P_1 / 2
    Valid: P_1 >= 0
    Source: army_full_drum

    >>> full_drum_pull_n(40e3)
    20000.0
    """
    checked.at_least(0, first_layer_n=first_layer_n)
    return FULL_DRUM_RATIO * first_layer_n

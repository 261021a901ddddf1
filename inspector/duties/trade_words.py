"""What the words of the trade in a text mean, for whoever reads it for the first time."""

from inspector.gear.verdict import Fact
from inspector.rulebook.terms import terms_of


def trade_words(text: str) -> tuple[Fact, ...]:
    """Every word of the trade in a text, each once, with its meaning."""
    return terms_of(text)

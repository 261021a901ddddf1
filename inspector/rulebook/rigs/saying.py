"""Figures in the words of a rig's account, and the list of what its sums take for granted."""

from msgspec import Struct, field

from inspector.gear.rig_result import Assumption
from inspector.language import tr
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, Figure, System, read, show, show_bound


def speed_within(most_m_per_s: float, system: System) -> Figure:
    """The greatest speed that prints as no more than this: rounded up, a limit would be milder in print than it is."""
    typed = show_bound(most_m_per_s, Dimension.SPEED, system, least=False)
    return read(typed, Dimension.SPEED, field=tr("speed"))


class Account(Struct):
    """The sum as it grows: its steps, and what it takes for granted."""

    book: Rulebook
    system: System
    steps: list[str] = field(default_factory=list)
    assumptions: list[Assumption] = field(default_factory=list)

    def force(self, pull_n: float) -> str:
        """Newtons as they print."""
        return show(pull_n, Dimension.FORCE, self.system)

    def show(self, si: float, dimension: Dimension) -> str:
        """A value as it prints."""
        return show(si, dimension, self.system)

    def step(self, text: str) -> None:
        """One line of the sum."""
        self.steps.append(text)

    def recorded(self, what: str, figure: Figure) -> float:
        """A figure that stands in the register. Returns its SI value."""
        self.assumptions.append(Assumption(what, figure.as_typed, tr("as it was written down"), tr("the register")))
        return figure.si

    def said(self, what: str, figure: Figure) -> float:
        """A figure somebody wrote for this pull. Returns its SI value."""
        self.assumptions.append(
            Assumption(what, figure.as_typed, tr("as it was said"), tr("typed for this pull"), True)
        )
        return figure.si

    def setting(self, what: str, key: str, why: str = "") -> float:
        """A figure of the rulebook that stands because nobody said another. Returns its SI value."""
        text, figure = self.book.setting_texts[key], self.book.settings[key]
        source = self.book.source_text(text.source)
        self.assumptions.append(Assumption(what, figure.as_typed, why or text.says, source))
        return figure.si

    def assume(self, what: str, value: str, why: str, source: str) -> None:
        """Something the sum takes for granted that is no setting. source: a key of sources.toml."""
        self.assumptions.append(Assumption(what, value, why, self.book.source_text(source)))

"""Which pieces a run of inspections goes through, in which order, and what came of each."""

from collections.abc import Sequence

from msgspec import Struct, field

from inspector.gear.judged import Judged


class RunList(Struct):
    """tags: in order; at: the place of the one that is open; outcomes: by tag, of those that are inspected."""

    tags: tuple[str, ...]
    at: int = 0
    outcomes: dict[str, Judged] = field(default_factory=dict)

    @property
    def tag(self) -> str:
        """The piece that is open."""
        return self.tags[self.at]

    @property
    def left(self) -> tuple[str, ...]:
        """The pieces that are not inspected yet."""
        return tuple(tag for tag in self.tags if tag not in self.outcomes)

    def next_place(self, step: int) -> int | None:
        """The next place onward (step 1) or back (-1) that is not inspected; None where there is none that way."""
        ahead: Sequence[int] = range(self.at + 1, len(self.tags)) if step > 0 else range(self.at - 1, -1, -1)
        return next((place for place in ahead if self.tags[place] not in self.outcomes), None)

"""The chain that is built: runs of tags with what was done and undone. The typed runs are the same, as lines."""

from msgspec import Struct

Runs = tuple[tuple[str, ...], ...]


class Spot(Struct, frozen=True):
    """A place in a run: before the part with this number; of a run that is not there yet, its beginning."""

    run: int
    at: int


class Chain:
    """The runs as they stand. No run is ever empty; each step can be undone, and done again until another is made."""

    def __init__(self, runs: Runs = ()) -> None:
        self._runs = _without_empty(runs)
        self._undone: list[Runs] = []
        self._done: list[Runs] = []
        self._typing = False

    @property
    def runs(self) -> Runs:
        """What stands."""
        return self._runs

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to take back."""
        return bool(self._done)

    @property
    def can_redo(self) -> bool:
        """Whether a step was taken back."""
        return bool(self._undone)

    def run(self, number: int) -> tuple[str, ...]:
        """One run; empty where it is still to be begun."""
        return self._runs[number] if 0 <= number < len(self._runs) else ()

    def become(self, runs: Runs, *, typed: bool = False) -> bool:
        """Other runs, as one step. False where they are those that stand. typed: letter by letter, all one step."""
        wanted = _without_empty(runs)
        if wanted == self._runs:
            return False
        if not (typed and self._typing):
            self._done.append(self._runs)
        self._undone.clear()
        self._runs, self._typing = wanted, typed
        return True

    def end_typing(self) -> None:
        """What is typed next is a step of its own."""
        self._typing = False

    def settle(self) -> None:
        """What stands is kept in the register: nothing before it comes back."""
        self._done.clear()
        self._undone.clear()
        self._typing = False

    def put(self, spot: Spot, tag: str) -> bool:
        """Put a part into a place; at the place behind the last run begin another one."""
        run = self.run(spot.run)
        return bool(tag) and self._with(spot.run, (*run[: spot.at], tag, *run[spot.at :]))

    def take(self, spot: Spot) -> bool:
        """Take out the part with this number; False where there is none."""
        run = self.run(spot.run)
        return 0 <= spot.at < len(run) and self._with(spot.run, (*run[: spot.at], *run[spot.at + 1 :]))

    def move(self, spot: Spot, to: int) -> bool:
        """Let the part with this number be the one with number `to` of its run; False where that is not to be had."""
        run = list(self.run(spot.run))
        if not (0 <= spot.at < len(run) and 0 <= to < len(run)):
            return False
        run.insert(to, run.pop(spot.at))
        return self._with(spot.run, tuple(run))

    def undo(self) -> bool:
        """Take the last step back; False where there is none."""
        return self._step(self._done, self._undone)

    def redo(self) -> bool:
        """Do again what was taken back last; False where nothing was."""
        return self._step(self._undone, self._done)

    def _step(self, source: list[Runs], target: list[Runs]) -> bool:
        if not source:
            return False
        target.append(self._runs)
        self._runs, self._typing = source.pop(), False
        return True

    def _with(self, number: int, run: tuple[str, ...]) -> bool:
        return self.become((*self._runs[:number], run, *self._runs[number + 1 :]))


def _without_empty(runs: Runs) -> Runs:
    return tuple(run for run in runs if run)

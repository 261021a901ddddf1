"""What is shown next is what was asked for last: an answer that comes late, to an older question, is dropped."""

from collections.abc import Callable
from typing import TypeVar

from inspector.desk.background import Background
from inspector.desk.notice import Notice

Result = TypeVar("Result")


class Latest:
    """Reads for a page that shows one thing at a time."""

    def __init__(self, background: Background, notice: Notice) -> None:
        self._background, self._notice = background, notice
        self._asked = 0

    def read(self, deed: Callable[..., Result], *given: object, done: Callable[[Result], object]) -> None:
        """Do `deed(*given)` in a worker; done gets its result unless something else was asked for meanwhile."""
        self._asked = number = self._asked + 1

        def show(found: Result) -> None:
            if number == self._asked:
                done(found)

        self._background.run(deed, *given, done=show, failed=self._notice.refuse)

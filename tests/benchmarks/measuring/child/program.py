"""The program within a measuring process: its clock stopped on the evening of the registers, its imports watched."""

import importlib.util
import sys
from collections.abc import Callable
from types import ModuleType
from typing import Any

LISTED = "SELECT tag, kind, outcome, next_due, rated, owner, place FROM standing ORDER BY tag"  # a list as it is told


class AfterImport:
    """Does something to a module as soon as the program has imported it."""

    def __init__(self, name: str, deed: Callable[[ModuleType], None]) -> None:
        self._name, self._deed = name, deed
        sys.meta_path.insert(0, self)

    def find_spec(self, name: str, path: object = None, target: object = None) -> Any:
        if name != self._name:
            return None
        sys.meta_path.remove(self)
        spec = importlib.util.find_spec(name)
        if spec is None or spec.loader is None:
            raise ImportError(name)
        load, deed = spec.loader.exec_module, self._deed

        def exec_module(module: ModuleType) -> None:
            load(module)
            deed(module)

        spec.loader.exec_module = exec_module  # type: ignore[method-assign]
        return spec


def started() -> Any:
    """The program's module `app`, imported now, with its clock stopped."""
    import gc
    from datetime import UTC, datetime

    from inspector import SELDOM

    gc.set_threshold(SELDOM)  # as the program's own process does before it imports anything
    from inspector import app

    class Stopped(datetime):
        @classmethod
        def now(cls, tz: Any = None) -> Any:
            return datetime(2026, 11, 25, 20, 0, tzinfo=UTC)

    if not hasattr(app, "datetime"):
        raise RuntimeError("the program reads its clock elsewhere now")
    app.datetime = Stopped
    return app

"""Modules of pages, fetched in the worker before the window makes the pages: it never stands still for an import."""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.desk.background import Background
    from inspector.duties.office import Told


def fetch_list() -> None:
    """What the window on an open register is made of, the gear list before all."""
    from inspector.desk import in_step, pages, proving, wiring  # noqa: F401


def fetch_first_page() -> None:
    """The page that is shown first."""
    from inspector.desk.needs import needs_page  # noqa: F401


def fetch_the_rest(background: "Background") -> None:
    """Every other page, a module after the other; it ends where the window is closed."""
    progress = background.progress()
    background.run(_fetch_all, progress.told, done=lambda _: progress.deleteLater(), failed=lambda _: None)


def _fetch_all(told: "Told") -> None:
    from pkgutil import walk_packages

    import inspector.desk

    names = [one.name for one in walk_packages(inspector.desk.__path__, "inspector.desk.")]
    for number, name in enumerate(names, 1):
        import_module(name)
        told(number, len(names))

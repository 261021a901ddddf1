"""The menu of all that can be done with a trip."""

from collections.abc import Callable, Iterable
from typing import Any

from PySide6.QtWidgets import QMenu

from inspector.desk.deeds import trips, visits
from inspector.desk.form.deed import Deed
from inspector.desk.place import Go
from inspector.desk.places import DEED
from inspector.gear.kind import Kind
from inspector.gear.trip import Trip
from inspector.language import tr


def fill(menu: QMenu, trip: Trip | None, kinds: Iterable[Kind], go: Callable[[Go], object]) -> None:
    """Every deed of a trip, and those that need none. go: where the form of a deed is asked for."""
    menu.clear()
    if trip:
        for deed in (trips.change(trip), trips.change_kit(trip), trips.write_out(trip)):
            _entry(menu, deed, trip, trip.ref, go)
        guests = menu.addMenu(tr("Somebody else's piece comes along"))
        _entry(guests, visits.again(trip), trip, trip.ref, go)
        guests.addSeparator()
        for kind in kinds:
            _entry(guests, visits.visit(trip, kind), trip, trip.ref, go)
        menu.addSeparator()
    for made in (trips.plan(), trips.take_in()):
        _entry(menu, made, None, "", go)


def _entry(menu: QMenu, deed: Deed[Any], about: object, key: str, go: Callable[[Go], object]) -> None:
    action = menu.addAction(f"{deed.name}…")
    action.setToolTip(deed.says)
    action.triggered.connect(lambda _checked=False: go(Go(DEED, (deed, about, key))))

"""The menu of all that can be done with a trip: plan, change, take a member's piece along, files, papers."""

from collections.abc import Callable, Iterable
from typing import Any

from PySide6.QtWidgets import QMenu

from inspector.desk.deeds import hands, trips, visits
from inspector.desk.form.deed import Deed
from inspector.desk.place import Go
from inspector.desk.places import DEED
from inspector.gear.kind import Kind
from inspector.gear.trip import Trip
from inspector.language import tr

Asks = Callable[[Go], object]


def fill(menu: QMenu, trip: Trip | None, kinds: Iterable[Kind], go: Asks, *, is_over: bool = False) -> None:
    """Every deed of this trip, of none where no trip is planned yet. kinds: of which a member's piece may be.

    go: where the form of a deed is asked for.
    """
    menu.clear()
    menu.setToolTipsVisible(True)
    _entry(menu, trips.plan(), None, go)
    if trip:
        for deed in (trips.change(trip), trips.change_kit(trip)):
            _entry(menu, deed, trip, go)
        if trip.kit and trip.vehicles:
            _entry(menu, trips.rides(trip), trip, go)
        if not is_over:
            _along(menu.addMenu(tr("Take a member's piece along")), trip, kinds, go)
        menu.addSeparator()
        if not is_over:
            _entry(menu, hands.hand_out_kit(trip.ref), trip.ref, go)
        _entry(menu, hands.take_kit_back(trip.ref), trip.ref, go)
        menu.addSeparator()
        _entry(menu, trips.write_out(trip), trip, go)
    _entry(menu, trips.take_in(), None, go)


def _along(menu: QMenu, trip: Trip, kinds: Iterable[Kind], go: Asks) -> None:
    """One that came along before, or a new one by its kind."""
    menu.setToolTipsVisible(True)
    _entry(menu, visits.again(trip), trip, go)
    menu.addSeparator()
    for kind in kinds:
        _entry(menu, visits.visit(trip, kind), trip, go)


def _entry(menu: QMenu, deed: Deed[Any], about: object, go: Asks) -> None:
    key = about.ref if isinstance(about, Trip) else str(about or "")
    action = menu.addAction(tr("{deed}…", deed=deed.name.replace("&", "&&")))
    action.setToolTip(deed.says)
    action.triggered.connect(lambda _checked=False: go(Go(DEED, (deed, about, key))))

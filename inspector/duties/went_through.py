"""What whoever brings a piece back tells of it, put into days: pulls and weathers up to the day of the return."""

from collections.abc import Mapping
from datetime import date, timedelta

from msgspec import Struct, field

from inspector.gear.custody import WentThrough
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Figure


class ToldBack(Struct, frozen=True):
    """What was told. pulls None: nobody told; days: of each weather, up to the return; hottest: of a heat.

    nothing: no pulls, no event and no weather, in the bringer's own words; no_weather: none of the weathers.
    """

    pulls: int | None = None
    event: Event = Event.NONE
    days: Mapping[Weather, int] = field(default_factory=dict)
    hottest: Figure | None = None
    rinsed: bool | None = None
    dried: bool | None = None
    nothing: bool = False
    no_weather: bool = False


def went_through(told: ToldBack, day: date) -> WentThrough:
    """What it says of a piece that came back on a day; what it leaves out stays untold. Refused where it contradicts
    itself."""
    uses, exposures = _uses(told, day), _exposures(told, day)
    if (told.nothing and (uses or exposures)) or (told.no_weather and exposures):
        why = tr("It says that something happened and that nothing did.")
        raise Refused(tr("return"), why, tr("Take back that nothing happened, or what goes against it."))
    washed = told.rinsed is not None or told.dried is not None
    if (washed and not exposures) or (told.hottest and Weather.HEAT not in told.days):
        why = tr("Rinsed and dried belong to days of salt, mud or the like, and a temperature to days of heat.")
        raise Refused(tr("return"), why, tr("Say how many days of which, for example 2 days of salt."))
    quiet = told.nothing or told.no_weather
    return WentThrough(() if told.nothing and uses is None else uses, () if quiet else exposures)


def _uses(told: ToldBack, day: date) -> tuple[NewUse, ...] | None:
    if told.pulls is None and told.event is Event.NONE:
        return None
    happened = bool(told.pulls) or told.event is not Event.NONE
    return (NewUse(day, told.pulls or 0, told.event),) if happened else ()


def _exposures(told: ToldBack, day: date) -> tuple[NewExposure, ...] | None:
    """Each weather told, its last day the day of the return."""
    found = []
    for weather, days in told.days.items():
        heat = told.hottest if weather is Weather.HEAT else None
        first = day - timedelta(days=days - 1)
        found.append(NewExposure(first, weather, days, told.rinsed, hottest=heat, dried=told.dried))
    return tuple(found) or None

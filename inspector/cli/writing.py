"""Commands that do a deed and say what came of it."""

from typing import Any

import click

from inspector.cli import booking, say, typed
from inspector.cli.passphrase import with_second
from inspector.cli.vehicles import ENDS, SIDES
from inspector.cli.wiring import Desk, choice
from inspector.duties import look_up
from inspector.duties.book_in import book_in
from inspector.duties.book_in_forms import still_wanted
from inspector.duties.keep_passphrases import passes_nothing
from inspector.duties.plausible import cautions_of, confirmed_words, with_confirmed
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.tags_left_on import tag_left_on
from inspector.gear.inspection import InspectionKind, Method, Surface
from inspector.gear.item import Provenance
from inspector.gear.kind import Basis
from inspector.gear.outcome import Purpose
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.language import tr
from inspector.units import Dimension, read


@click.command()
@click.argument("tag")
@click.option("--kind", "key", required=True, help="Kind of gear; `inspector kinds` lists them.")
@click.option("--rating", default="", help='As marked, for example "4.75 t".')
@click.option("--basis", type=choice(Basis), default=Basis.UNRATED.value, show_default=True)
@click.option("--factor", default="", help="Design factor behind a working load limit.")
@click.option(
    "--stated-on",
    type=click.Choice(["piece", "certificate", "memory"]),
    default=None,
    help="Where the rating was read; with a rating it must be said. One from memory counts for nothing.",
)
@click.option("--size", "sizes", multiple=True, help='Size as new, "bow_diameter=19 mm"; may be given again.')
@click.option(
    "--past",
    type=choice(Provenance),
    default=Provenance.UNKNOWN.value,
    show_default=True,
    help="In which form it came.",
)
@click.option("--from", "from_whom", default="", help="Who sold, gave, made or lent it.")
@click.option("--paper", default="", help="Number and issuer of its certificate, or its receipt.")
@click.option("--borrowed-until", default="", help="The day by which a borrowed piece goes back.")
@click.option("--owner", default="")
@click.option("--maker-mark", default="")
@click.option("--serial", default="")
@click.option("--material", default="")
@click.option("--place", default="")
@click.option("--made-on", default="")
@click.option("--in-service-on", default="", help="A strap or rope with neither day is held.")
@click.option("--kept-for", multiple=True, type=choice(Purpose))
@click.option("--fixed-by", type=click.Choice(["bolts", "welds"]), help="What holds it to the vehicle.")
@click.option("--fitted-to", default="", help="Tag of the vehicle it sits on.")
@click.option("--end", type=ENDS, default=None, help="Which end of the vehicle.")
@click.option("--side", type=SIDES, default=None, help="Which side, as the driver sees it.")
@click.option("--note", default="")
@click.pass_obj
def book(desk: Desk, /, tag: str, key: str, rating: str, basis: str, factor: str, **more: Any) -> None:
    """Book a piece in under TAG."""
    office = desk.office()
    facts = booking.facts(office, tag, key, rating, basis, factor, more)
    say.verdict_in_full(book_in(office, facts))
    for line in still_wanted(facts):
        say.paragraph(line)


@click.command()
@click.argument("tag")
@click.option("--grade", "grades", multiple=True, help='"check=good", slight, bad or not_seen; may be given again.')
@click.option("--all-good", is_flag=True, help="Every check that is not graded otherwise was looked at and good.")
@click.option("--reading", "readings", multiple=True, help='"wall@lower face=2.9 mm"; may be given again.')
@click.option("--method", type=choice(Method), help="How the wall was read; needed with each reading of a wall.")
@click.option("--surface", type=choice(Surface), default=Surface.NOT_STATED.value, show_default=True)
@click.option("--gauge", default="", help="Which gauge.")
@click.option(
    "--block-checked/--block-not-checked", default=None, help="Whether the gauge was tried on its block that day."
)
@click.option("--on", default="", help="Day of the inspection; today where none is given.")
@click.option("--kind", type=choice(InspectionKind), default=InspectionKind.PERIODIC.value, show_default=True)
@click.option("--by", default="", help="Who inspected; the officer where nobody is named.")
@click.option("--second", default="", help="Another competent person who looked as well; needed for one's own gear.")
@click.option("--next-within", type=int, help="Days to the next inspection, where you ask for fewer than usual.")
@click.option("--note", default="")
@typed.READ_AGAIN
@click.pass_obj
def inspect(desk: Desk, /, tag: str, again: bool, **more: Any) -> None:
    """Log an inspection of TAG and judge it."""
    office = with_second(desk.office(), more["second"])
    dossier = look_up.open_item(office, tag).dossier
    facts = typed.inspection(office, dossier.kind, typed.Typed(**more))
    odd = cautions_of(office, dossier, facts)
    typed.second_look(odd, again=again)
    outcome = record_inspection(office, tag, with_confirmed(facts, odd, odd))
    for one in odd:
        say.paragraph(confirmed_words(one))
    for line in passes_nothing(office, tag, facts):
        say.paragraph(line)
    say.verdict_in_full(outcome, tag_left_on(office, outcome))


@click.command()
@click.argument("tag")
@click.option("--pulls", type=int, default=1, show_default=True)
@click.option("--event", type=choice(Event), default=Event.NONE.value, show_default=True)
@click.option("--on", default="")
@click.option("--note", default="")
@click.pass_obj
def use(desk: Desk, tag: str, pulls: int, event: str, on: str, note: str) -> None:
    """Log the pulls of a day."""
    office = desk.office()
    facts = NewUse(typed.day(on, office.today), pulls, Event(event), office.officer.id, note)
    say.verdict_in_full(record_use(office, tag, facts))


@click.command()
@click.argument("tag")
@click.option("--weather", type=choice(Weather), required=True)
@click.option("--days", type=int, default=1, show_default=True)
@click.option("--rinsed/--not-rinsed", default=None)
@click.option("--hottest", default="", help="greatest temperature of a heat, with its unit: 95 °C")
@click.option("--on", default="")
@click.option("--note", default="")
@click.pass_obj
def expose(
    desk: Desk, tag: str, weather: str, days: int, rinsed: bool | None, hottest: str, on: str, note: str
) -> None:
    """Log days in salt, mud, sun, heat, chemicals or frost."""
    office = desk.office()
    day = typed.day(on, office.today)
    heat = read(hottest, Dimension.TEMPERATURE, field=tr("hottest")) if hottest else None
    facts = NewExposure(day, Weather(weather), days, rinsed, office.officer.id, note, heat)
    say.verdict_in_full(record_exposure(office, tag, facts))

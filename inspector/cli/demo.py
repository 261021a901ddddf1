"""An officer's evening on the sample register, told as it happens, through the same duties that the window uses."""

from pathlib import Path

import click

from inspector.cli import say, typed
from inspector.cli.demo_rigs import look_at_rigs
from inspector.cli.wiring import Desk, Wiring
from inspector.drawings.marks import outcome_word
from inspector.duties import look_up
from inspector.duties.book_in import book_in
from inspector.duties.build_sample import build_sample
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.record_inspection import record_inspection
from inspector.duties.retire_item import print_notice
from inspector.duties.sit_down import seat
from inspector.duties.trip_readiness import readiness
from inspector.gear.inspection import InspectionKind, Method, Surface
from inspector.gear.item import NewItem, Provenance, Rating
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis
from inspector.gear.outcome import Purpose
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension, read

_NEW_SHACKLE = "SH-90"
_MOUNT, _RECEIVER, _WORN_STRAP, _SOUND_PIN = "BM-02", "HR-02", "KS-03", "RI-01"
_HOLE = ("pin_hole@left wall=16.4 mm", "pin_hole@right wall=16.3 mm")
_MOUNT_READINGS = ("wall@top=3.4 mm", "wall@bottom=2.9 mm", "wall@left=3.6 mm", "wall@right=3.5 mm", *_HOLE)
_RECEIVER_READINGS = ("wall@top=5.3 mm", "wall@bottom=5.1 mm", "wall@left=5.4 mm", "wall@right=5.3 mm", *_HOLE)


@click.command()
@click.option("--to", "folder", required=True, type=click.Path(path_type=Path), help="Folder to make the sample in.")
@click.option("--no-window", is_flag=True, help="Do not open the window afterwards.")
@click.pass_obj
def demo(desk: Desk, folder: Path, no_window: bool) -> int:
    """Make the sample register and spend an officer's evening on it."""
    return spend_evening(desk.wiring, folder, window=not no_window)


def spend_evening(wiring: Wiring, folder: Path, *, window: bool) -> int:
    """Make the sample in the folder, do the evening's work, open the window. Returns the exit code."""
    if wiring.has_register(folder):
        why = tr("{folder} holds a register already.", folder=folder)
        raise Refused(tr("folder"), why, tr("Name another folder, or open it: inspector --register FOLDER window."))
    office = _sample(wiring, folder)
    judged = [*_book_a_shackle(office), *_read_the_walls(office), *_look_at_two(office)]
    rig_sheets = look_at_rigs(office)
    papers = [*_print(office), *rig_sheets]
    _close(judged, papers)
    return _open(wiring, office, folder) if window else 0


def _sample(wiring: Wiring, folder: Path) -> Office:
    office = wiring.open_office(folder)
    click.echo(tr("Building the sample register in {folder} …", folder=folder))
    build_sample(office)
    found = look_up.list_gear(office, limit=1)
    split = ", ".join(f"{count} {outcome_word(one).lower()}" for one, count in found.counts.items())
    say.paragraph(tr("{total} pieces: {split}.", total=found.count, split=split))
    return seat(office)


def _book_a_shackle(office: Office) -> list[Judged]:
    say.heading(tr("1  A new bow shackle is booked in, and looked at for the first time"))
    rating = read("4.75 t", Dimension.FORCE, field=tr("rating"))
    kind = office.kind("bow_shackle")
    facts = NewItem(
        tag=_NEW_SHACKLE,
        kind=kind.key,
        rating=Rating(Basis.WLL, rating, 5.0, "certificate"),
        maker_mark="RKW",
        serial="2611-A",
        sizes=typed.sizes(office, kind, ("bow_diameter=19 mm", "pin_diameter=7/8 in")),
        owner="Club",
        place=tr("Store, hook 4"),
        provenance=Provenance.NEW_CERTIFIED,
        in_service_on=office.today,
        kept_for=(Purpose.KINETIC, Purpose.STATIC),
    )
    say.verdict(book_in(office, facts))
    say.paragraph(tr("Now the first inspection, both diameters under the calliper:"), "  ")
    outcome = _inspect(office, _NEW_SHACKLE, ("bow_diameter=19 mm", "pin_diameter=22.2 mm"), Method.CALLIPER)
    say.verdict(outcome)
    say.passes(outcome, sources=False)
    return [outcome]


def _read_the_walls(office: Office) -> list[Judged]:
    say.heading(tr("2  A ball mount and the receiver around it: clean outside, years of salt launches, read by gauge"))
    outcomes = []
    for tag, readings in ((_MOUNT, _MOUNT_READINGS), (_RECEIVER, _RECEIVER_READINGS)):
        outcomes.append(_inspect(office, tag, readings, Method.ULTRASONIC_BARE))
        say.verdict(outcomes[-1])
        click.echo()
    return outcomes


def _look_at_two(office: Office) -> list[Judged]:
    say.heading(tr("3  A strap that has to be reckoned weaker, and a piece that passes"))
    worn = look_up.open_item(office, _WORN_STRAP)
    say.verdict(worn)
    click.echo()
    sound = look_up.open_item(office, _SOUND_PIN)
    say.verdict(sound)
    say.passes(sound, sources=False)
    return [worn, sound]


def _inspect(office: Office, tag: str, readings: tuple[str, ...], method: Method) -> Judged:
    kind = look_up.open_item(office, tag).dossier.kind
    written = typed.Typed(
        grades=(),
        readings=readings,
        all_good=True,
        method=method.value,
        surface=Surface.DRESSED.value,
        gauge=tr("club gauge 1, tried on its block"),
        on="",
        kind=InspectionKind.PERIODIC.value,
        by="",
        note="",
        block_checked=True,
    )
    return record_inspection(office, tag, typed.inspection(office, kind, written))


def _print(office: Office) -> list[Paper]:
    planned = readiness(office, "next")
    say.heading(tr("5  Papers for “{trip}”", trip=planned.trip.name))
    going, staying = len(planned.going), len(planned.staying)
    say.paragraph(tr("{going} pieces of the kit go, {staying} stay at home.", going=going, staying=staying), "  ")
    for one in planned.staying:
        say.paragraph(f"{one.dossier.item.tag}  {one.explanation.headline}", "    ", "      ")
    return [print_trip_sheet(office, "next"), print_notice(office, _MOUNT)]


def _close(judged: list[Judged], papers: list[Paper]) -> None:
    say.heading(tr("6  What was judged tonight"))
    rows = [
        (one.dossier.item.tag, one.dossier.kind.name, outcome_word(one.verdict.outcome), one.explanation.use_line)
        for one in judged
    ]
    say.table((tr("Tag"), tr("Kind"), tr("Verdict"), tr("May be used for")), rows)
    click.echo()
    for one in papers:
        say.paper(one)
    say.cautions(judged[0])


def _open(wiring: Wiring, office: Office, folder: Path) -> int:
    again = tr("Open it again with: inspector --register {folder} window", folder=folder)
    if not wiring.has_display():
        say.paragraph(tr("There is no screen here, so no window opens. {again}", again=again))
        return 0
    say.paragraph(again)
    return wiring.open_window(lambda _told: office, _MOUNT)

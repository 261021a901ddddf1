"""Commands for the bad day: report what happened, keep evidence, add to it, let it go, print and bundle."""

from pathlib import Path
from typing import Any

import click

from inspector.cli import say, typed
from inspector.cli.passphrase import key_passphrase, with_second
from inspector.cli.rigs import rig_called
from inspector.cli.wiring import Desk
from inspector.duties.bundle_incident import bundle_incident, check_bundle
from inspector.duties.evidence_paper import print_evidence
from inspector.duties.incident_checks import typed_distance
from inspector.duties.keep_incident import add_custody, add_statement, close_incident, hold_more
from inspector.duties.keep_key import grouped_key, what_it_proves
from inspector.duties.office import Office
from inspector.duties.recall import kin_of_broken
from inspector.duties.release_evidence import release_evidence, release_vehicle
from inspector.duties.report_incident import report_incident
from inspector.duties.tell_incident import IncidentTold, incident_told, incidents
from inspector.gear.incident import Gravity, NewIncident
from inspector.language import tr, tr_n
from inspector.refused import Refused

_FAULTS_FOUND = 1


@click.group()
def incident() -> None:
    """The bad day: what happened, what is kept as found, who lets it go."""


@incident.command()
@click.option("--what", required=True, help="What happened, in your own words.")
@click.option("--place", required=True, help="Where it happened.")
@click.option("--on", default="", help="Day it happened; today where none is given.")
@click.option("--near-miss", is_flag=True, help="Nothing broke or flew and nobody was hurt, but it was close.")
@click.option("--rig", "which", default="", help="The rig as it was rigged: the reference of a kept one, or a file.")
@click.option("--piece", "pieces", multiple=True, help="Tag of a piece that was there; may be given again.")
@click.option("--broke", "broken", multiple=True, help="Tag of a piece that broke or let go; may be given again.")
@click.option("--vehicle", "vehicles", multiple=True, help="Tag of a vehicle that was there; may be given again.")
@click.option("--witness", "witnesses", multiple=True, help="Name as stated; may be given again.")
@click.option(
    "--distance",
    "distances",
    nargs=3,
    multiple=True,
    help='Of the sketch: "V-01 hook" "witness" "12 m"; may be given again.',
)
@click.option("--trip", default="", help="Reference of the trip.")
@click.option("--by", default="", help="Who reports; the officer where nobody is named.")
@click.pass_obj
def report(desk: Desk, /, what: str, place: str, on: str, near_miss: bool, which: str, **more: Any) -> None:
    """Report an accident or a near miss. Of an accident every piece, fitted part and vehicle is kept as found."""
    office = desk.office()
    told = NewIncident(
        on=typed.day(on, office.today),
        gravity=Gravity.NEAR_MISS if near_miss else Gravity.ACCIDENT,
        place=place,
        what=what,
        pieces=(*more["pieces"], *more["broken"]),
        vehicles=more["vehicles"],
        witnesses=more["witnesses"],
        rig=rig_called(office, which) if which else None,
        distances=tuple(typed_distance(one, office.decimal) for one in more["distances"]),
        trip=more["trip"],
        by=more["by"],
        broken=more["broken"],
    )
    kept = report_incident(office, told)
    click.echo(tr("{ref} is kept.", ref=kept.incident.ref))
    for one in kept.pieces:
        say.paragraph(f"{one.dossier.item.tag}  {one.explanation.headline}", "  ", "      ")
    for tag, why in kept.incident.facts.gone:
        say.paragraph(f"{tag}  {why}", "  ", "      ")
    if kept.pieces:
        say.cautions(kept.pieces[0])


@incident.command(name="list")
@click.pass_obj
def list_command(desk: Desk) -> None:
    """List the incidents and what is still kept for each."""
    found = incidents(desk.office())
    if not found:
        click.echo(tr("No incident was reported."))
        return
    head = (tr("Ref"), tr("Day"), tr("What it was"), tr("Report"), tr("Place"))
    say.table(head, [(one.ref, one.day, one.gravity, one.state, one.place) for one in found])
    for one in found:
        if one.kept:
            say.paragraph(tr("{ref} still keeps: {tags}", ref=one.ref, tags=one.kept))


@incident.command()
@click.argument("ref")
@click.pass_obj
def show(desk: Desk, ref: str) -> None:
    """Show an incident: what is known of it, its pieces, and others that may be of one batch with what broke."""
    office = desk.office()
    found = incident_told(office, ref)
    say.heading(f"{found.ref} · {found.gravity}")
    say.facts(found.facts)
    say.paragraph(found.what, "  ")
    _say_pieces(found)
    if found.added:
        say.heading(tr("What was said and done since"))
        say.table((tr("Day"), tr("What"), ""), found.added)
    _say_kin(office, ref)


def _say_pieces(found: IncidentTold) -> None:
    say.heading(tr("The pieces"))
    head = (tr("Tag"), tr("Kind"), tr("Verdict that day"), tr("Had it"), tr("State"))
    say.table(head, [(one.tag, one.kind_name, one.verdict, one.held_by or "–", one.state) for one in found.pieces])
    for tag, name, state in found.vehicles:
        say.paragraph(tr("{tag} · {name}: {state}", tag=tag, name=name, state=state), "  ", "    ")


def _say_kin(office: Office, ref: str) -> None:
    """Other pieces to look at; nothing is said of whether they are sound."""
    kin = kin_of_broken(office, ref)
    if not kin:
        return
    say.heading(tr("Look at these as well"))
    say.paragraph(tr("They may be of one batch with what broke. It is a list to look at, no verdict."), "  ")
    for one in kin:
        marked = f"{one.tag} · {one.kind_name} · {one.maker_mark} {one.serial}".rstrip()
        say.paragraph(tr("{piece}: like {tag}, {why}", piece=marked, tag=one.like, why=one.why), "  – ", "    ")


@incident.command()
@click.argument("ref")
@click.option("--statement", "witness", default="", help="Name of a witness, as stated; --text is what is said.")
@click.option("--custody", "tag", default="", help="Tag of a kept piece that --holder has from now on.")
@click.option("--holder", default="", help="Name as stated.")
@click.option("--text", default="", help="The statement; of a custody where it lies, its seal.")
@click.option("--by", default="", help="Who writes it down; the officer where nobody is named.")
@click.pass_obj
def add(desk: Desk, ref: str, witness: str, tag: str, holder: str, text: str, by: str) -> None:
    """Add a witness's statement, or who holds a piece of evidence from now on."""
    if bool(witness) == bool(tag):
        why = tr("Either a statement is added or a hand-over.")
        raise Refused(tr("add"), why, tr("Say --statement NAME --text …, or --custody TAG --holder NAME."))
    office = desk.office()
    if witness:
        add_statement(office, ref, witness, text, by)
        click.echo(tr("The statement of {name} is kept.", name=witness.strip()))
        return
    kept = add_custody(office, ref, tag, holder, text, by)
    click.echo(tr("{tag} is with {name} from now on.", tag=kept.facts.about, name=kept.facts.holder))


@incident.command()
@click.argument("ref")
@click.argument("tag")
@click.option("--why", required=True, help="How it belongs to the incident.")
@click.pass_obj
def hold(desk: Desk, ref: str, tag: str, why: str) -> None:
    """Keep a further piece TAG as found."""
    say.verdict_in_full(hold_more(desk.office(), ref, tag, why))


@incident.command()
@click.argument("ref")
@click.argument("tags", nargs=-1)
@click.option("--vehicle", "vehicles", multiple=True, help="Tag of a vehicle to let go; may be given again.")
@click.option("--second", required=True, help="The other competent person.")
@click.option("--why", required=True, help="Why it need not be kept any longer.")
@click.option("--by", default="", help="The first competent person; the officer where nobody is named.")
@click.option("--whole", is_flag=True, help="They broke: --why says how they are whole again, or were named wrongly.")
@click.pass_obj
def release(
    desk: Desk, /, ref: str, tags: tuple[str, ...], vehicles: tuple[str, ...], *, whole: bool, **said: str
) -> None:
    """Let the pieces TAGS or vehicles go, by two competent persons; a piece stays on hold until it is inspected.

    What broke stays on hold until two have answered that as well, with --whole, then or later.
    """
    office = desk.office()
    if not tags and not vehicles:
        raise Refused(tr("tag"), tr("Nothing is named."), tr("Write the tags of pieces, or --vehicle and its tag."))
    office = with_second(office, said["second"])
    with office.book.together():
        freed = [release_evidence(office, ref, tag, whole=whole, **said) for tag in tags]
        for tag in vehicles:
            release_vehicle(office, ref, tag, **said)
    for one in freed:
        say.paragraph(f"{one.dossier.item.tag}  {one.explanation.headline}", "  ", "      ")
    for tag in vehicles:
        click.echo(tr("  {tag}  released", tag=tag))


@incident.command()
@click.argument("ref")
@click.option("--outcome", "text", required=True, help="What came of it.")
@click.pass_obj
def close(desk: Desk, ref: str, text: str) -> None:
    """Close the report, once nothing is kept for it any more."""
    close_incident(desk.office(), ref, text)
    click.echo(tr("{ref} is closed.", ref=ref))


@incident.command(name="print")
@click.argument("ref")
@click.option("--again", is_flag=True, help="Print the last list as it was said, not a new one.")
@click.pass_obj
def print_command(desk: Desk, ref: str, again: bool) -> None:
    """Print the evidence list."""
    say.paper(print_evidence(desk.office(), ref, again=again))


@incident.command()
@click.argument("ref")
@click.option("--to", "folder", required=True, type=click.Path(path_type=Path), help="A new folder.")
@click.option("--sign", "signed", is_flag=True, help="Sign it with this machine's key; its passphrase is asked.")
@click.pass_obj
def bundle(desk: Desk, ref: str, folder: Path, signed: bool) -> None:
    """Write all of it into a new folder with checksums, for whoever inquires into it."""
    made = bundle_incident(desk.office(), ref, folder, key_passphrase() if signed else None)
    for name in made.files:
        click.echo(name)
    click.echo(tr("{count} files in {folder}; evidence list {number}.", count=len(made.files), folder=folder,
                  number=made.number))  # fmt: skip
    click.echo(tr("sha256 of the checksum file: {sha256}", sha256=made.sums_sha256))
    if made.key:
        click.echo(tr("Signed with the key {key}.", key=grouped_key(made.key)))
        say.paragraph(what_it_proves())


@incident.command()
@click.argument("folder", type=click.Path(exists=True, file_okay=False, path_type=Path))
@click.pass_obj
def check(desk: Desk, folder: Path) -> int:
    """Prove that nothing in the bundle FOLDER was changed since it was written."""
    faults = check_bundle(desk.office(), folder)
    for one in faults:
        click.echo(f"{one.where}: {one.why}")
    click.echo(
        tr_n("{count} fault found.", "{count} faults found.", len(faults)) if faults else tr("Nothing was changed.")
    )
    return _FAULTS_FOUND if faults else 0

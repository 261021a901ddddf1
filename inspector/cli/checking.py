"""The command for the check before a trip: what is to be looked at, and what a member saw."""

from collections.abc import Mapping, Sequence
from typing import Any

import click
from msgspec.structs import replace

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.drawings.marks import outcome_word
from inspector.duties.before_use import asked_checks
from inspector.duties.check_again import check_ahead, read_again
from inspector.duties.check_kit import kit_check, tell_checked, tell_piece, tell_progress
from inspector.duties.check_piece import check_piece, check_pieces
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.plausible import Caution
from inspector.gear.inspection import Answer
from inspector.gear.kind import Check, Grade, Kind
from inspector.gear.kit_check import KitCheck, KitPiece, Seen
from inspector.language import show_day, tr
from inspector.refused import Refused


@click.command()
@click.argument("trip")
@click.argument("tags", nargs=-1)
@click.option("--by", default="", help="Who looked, a person of the register.")
@click.option("--all-good", is_flag=True, help="Every question that is not graded otherwise was looked at and good.")
@click.option("--grade", "grades", multiple=True, help='"check=bad", slight, good or not_seen; may be given again.')
@click.option("--reading", "readings", multiple=True, help='"bow_diameter=18.8 mm"; may be given again.')
@click.option("--note", default="")
@click.option("--sheet", default="", help="Number of the paper it stood on.")
@click.option("--on", default="", help="The day of the check; today where none is given.")
@typed.READ_AGAIN
@click.pass_obj
def check(
    desk: Desk, /, trip: str, tags: tuple[str, ...], by: str, sheet: str, on: str, again: bool, **seen: Any
) -> None:
    """List what is to be checked for TRIP; show the questions on TAGS; keep what a member saw of them.

    Of several pieces at once, put the tag before each grade and reading: KS-02/abrasion=slight.
    """
    office = desk.office()
    if not (by or sheet or any(seen.values())):
        _show(kit_check(office, trip), tags)
        return
    _ask_for_the_rest(tags, by)
    pieces = _read_again(office, _seen_by_piece(office, tags, **seen), said=again)
    day = typed.day(on, office.today)
    if len(pieces) == 1:
        check_piece(office, trip, tags[0], by, pieces[tags[0]], sheet, day)
    else:
        check_pieces(office, trip, by, pieces, sheet, day)
    _say_outcomes(kit_check(office, trip), tags)


def _ask_for_the_rest(tags: tuple[str, ...], by: str) -> None:
    if not tags:
        raise Refused(tr("tag"), tr("It is not said which piece was looked at."), tr("Write its tag after the trip."))
    if not by.strip():
        raise Refused(tr("by"), tr("It is not said who looked."), tr("Say --by NAME; `inspector people` lists them."))


def _read_again(office: Office, pieces: Mapping[str, Seen], *, said: bool) -> dict[str, Seen]:
    """The pieces, the notes telling what was read again; refused where something is odd and nobody said so."""
    odd = {tag: _odd(office, tag, seen) for tag, seen in pieces.items()}
    named = [replace(one, name=f"{tag}: {one.name}") for tag, found in odd.items() for one in found]
    typed.second_look(named, again=said)
    return {tag: read_again(seen, odd[tag], odd[tag]) for tag, seen in pieces.items()}


def _odd(office: Office, tag: str, seen: Seen) -> tuple[Caution, ...]:
    """What is to be read again; of what cannot be kept at all it is told, piece by piece, when it is to be kept."""
    try:
        return check_ahead(office, open_item(office, tag).dossier, seen).odd if seen.readings else ()
    except Refused:
        return ()


def _seen_by_piece(
    office: Office, tags: Sequence[str], *, grades: Sequence[str], readings: Sequence[str], all_good: bool, note: str
) -> dict[str, Seen]:
    """What was typed, for each piece."""
    own_grades, own_readings = _by_tag(tags, grades, tr("grade")), _by_tag(tags, readings, tr("reading"))
    found = {}
    for tag in tags:
        kind = open_item(office, tag).dossier.kind
        answers = _answers(kind, own_grades[tag], all_good=all_good)
        found[tag] = Seen(answers, typed.readings(office, kind, own_readings[tag]), note)
    return found


def _by_tag(tags: Sequence[str], texts: Sequence[str], field: str) -> Mapping[str, list[str]]:
    """ "TAG/name=value" by tag; of one piece the tag may be left out."""
    found: dict[str, list[str]] = {tag: [] for tag in tags}
    for text in texts:
        head, sign, rest = text.partition("/")
        if sign and head in found:
            found[head].append(rest)
        elif len(found) == 1:
            found[tags[0]].append(text)
        else:
            why = tr("“{text}” does not say of which piece.", text=text)
            raise Refused(field, why, tr("Put the tag before it, for example {tag}/{text}.", tag=tags[0], text=text))
    return found


def _answers(kind: Kind, grades: Sequence[str], *, all_good: bool) -> tuple[Answer, ...]:
    given = {one.key: Grade.GOOD for one in asked_checks(kind)} if all_good else {}
    return typed.answers(given, grades)


def _show(found: KitCheck, tags: tuple[str, ...]) -> None:
    """The whole kit with its questions, or the pieces named with what their grades mean."""
    if not tags:
        _list(found)
    for tag in tags:
        if (piece := found.piece(tag)) is None:
            ref = found.trip.ref
            why = tr("{tag} is not in the kit of the trip {ref} and sits on none of its vehicles.", tag=tag, ref=ref)
            raise Refused(tr("tag"), why, tr("Look at the label again: `inspector check {ref}`.", ref=found.trip.ref))
        _piece(piece, piece.asked, in_full=True)


def _list(found: KitCheck) -> None:
    trip = found.trip
    say.heading(", ".join(filter(None, (trip.name, trip.place, show_day(trip.first_on)))))
    _say_progress(found)
    for piece in found.to_check:
        _piece(piece, piece.open if piece.goes else (), in_full=False)
    if others := [one for one in (*found.staying, *found.barred) if not one.made]:
        say.heading(tr("Not to be checked"))
        for piece in others:
            _line(piece)


def _say_progress(found: KitCheck) -> None:
    say.paragraph(tr("{progress}.", progress=tell_progress(found)))


def _piece(piece: KitPiece, asked: Sequence[Check], *, in_full: bool) -> None:
    click.echo()
    _line(piece)
    for one in asked:
        say.paragraph(f"{one.key}: {one.asks}", "    – ", "      ")
        for grade, what in ((tr("slight"), one.slight), (tr("bad"), one.bad)):
            if in_full and what:
                say.paragraph(f"{grade}: {what}", "        ", "          ")
    for measured in piece.measures if asked else ():
        key = "/".join((measured.measure.key, *measured.measure.points))
        say.paragraph(f"{key}: {measured.measure.name}, {measured.limit}", "    – ", "      ")


def _line(piece: KitPiece) -> None:
    told = " · ".join(filter(None, (piece.where, tell_piece(piece), tell_checked(piece))))
    say.paragraph(f"{piece.tag}  {piece.kind_name} ({outcome_word(piece.outcome)}). {told}", "  ", "      ")


def _say_outcomes(found: KitCheck, tags: tuple[str, ...]) -> None:
    shown = [piece for tag in tags if (piece := found.piece(tag))]
    for piece in shown:
        _line(piece)
        for one in piece.open:
            say.paragraph(tr("not looked at: {question}", question=one.asks), "    – ", "      ")
    _say_progress(found)
    for caution in shown[0].judged.explanation.cautions if shown else ():
        say.paragraph(caution)

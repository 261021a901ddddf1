"""The command for sheets that came back as files: what was read of them, kept once somebody says who looked."""

from collections.abc import Mapping, Sequence
from pathlib import Path

import click
from msgspec.structs import replace

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.drawings.marks import outcome_word
from inspector.duties.office import Office
from inspector.duties.read_returned import SheetBack, read_files
from inspector.duties.take_returned import seen_of, take_returned, typed_figure
from inspector.duties.tell_returned import to_mind
from inspector.gear.kit_check import Seen
from inspector.gear.photo_read import Answer
from inspector.gear.sheet_back import PieceBack, RowBack
from inspector.language import tr
from inspector.refused import Refused


@click.command("read-sheets")
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--by", default="", help="Who looked, a person of the register; without it nothing is kept.")
@click.option("--on", default="", help="The day on which the pieces were looked at; today where none is given.")
@click.option("--say", "said", multiple=True,
              help='What stands at a row that is not clear: "SH-01/bend=fault"; may be given again.')  # fmt: skip
@click.pass_obj
def read_sheets(desk: Desk, /, files: tuple[Path, ...], by: str, on: str, said: tuple[str, ...]) -> None:
    """Read sheets that came back: FILES are photos or scans of the ticked paper, or the form filled in on a screen.

    Look at what was read before it is kept. What is written by hand is typed in with the commands, or in the window.
    """
    office = desk.office()
    found = read_files(office, files)
    answers = _answers(said)
    sheets = [_settled(one, answers) for one in found.sheets]
    for one in sheets:
        _tell(one)
    for unread in found.unread:
        say.paragraph(f"{unread.name}: {unread.refusal.why} {unread.refusal.what_to_do}")
    if not sheets:
        raise Refused(tr("files"), tr("No sheet could be read from these files."), tr("Type the sheet in by hand."))
    if by.strip():
        for one in sheets:
            _keep(office, one, by, on)


def _answers(said: Sequence[str]) -> dict[str, Answer]:
    """What was said of rows that are not clear, by "tag/check"."""
    known = {one.value: one for one in (Answer.GOOD, Answer.FAULT, Answer.NONE)}
    found = {}
    for text in said:
        where, word = typed.pair(text, tr("say"))
        if word.casefold() not in known:
            why = tr("“{word}” is no answer.", word=word)
            raise Refused(tr("say"), why, tr("Say one of: {words}.", words=", ".join(known)))
        found[where.casefold()] = known[word.casefold()]
    return found


def _settled(back: SheetBack, answers: Mapping[str, Answer]) -> SheetBack:
    """Only what was not clear is said by a person; what was read stands."""

    def row(piece: PieceBack, one: RowBack) -> RowBack:
        answer = answers.get(f"{piece.tag}/{one.tick.key}".casefold()) if one.is_doubtful else None
        return replace(one, answer=answer) if answer else one

    pieces = (replace(piece, rows=tuple(row(piece, one) for one in piece.rows)) for piece in back.pieces)
    return replace(back, pieces=tuple(pieces))


def _tell(back: SheetBack) -> None:
    say.heading(tr("Sheet {number}: {trip}", number=back.number, trip=back.sheet.trip.name))
    for piece in back.pieces:
        _tell_piece(piece)
    for line in to_mind(back):
        say.paragraph(line)


def _tell_piece(piece: PieceBack) -> None:
    counted = {answer: sum(row.answer is answer for row in piece.rows) for answer in Answer}
    told = tr(
        "{tag}: {good} good, {fault} fault, {none} not ticked, {unsure} not clear",
        tag=piece.tag, good=counted[Answer.GOOD], fault=counted[Answer.FAULT], none=counted[Answer.NONE],
        unsure=counted[Answer.UNSURE],
    )  # fmt: skip
    say.paragraph(told, "  ", "      ")
    for row in piece.rows:
        where = f"{piece.tag}/{row.tick.key}"
        if row.answer is Answer.FAULT:
            say.paragraph(tr("fault: {where}: {question}", where=where, question=row.tick.text), "    – ", "      ")
        elif row.is_doubtful:
            say.paragraph(tr("not clear: {where}: {question}", where=where, question=row.tick.text), "    – ", "      ")
        if figure := typed_figure(row):
            say.paragraph(tr("written: {where}: {figure}", where=where, figure=figure), "    – ", "      ")
    if piece.remarks and piece.remarks.text:
        say.paragraph(tr("Remarks: {text}", text=piece.remarks.text), "    – ", "      ")


def _keep(office: Office, back: SheetBack, by: str, on: str) -> None:
    day = typed.day(on, office.today)
    kept = take_returned(office, back.number, by, _seen(office, back), day, back.files)
    for one in kept:
        head = tr("{tag}: {outcome}", tag=one.dossier.item.tag, outcome=outcome_word(one.verdict.outcome))
        say.paragraph(head, "  ", "      ")


def _seen(office: Office, back: SheetBack) -> dict[str, Seen]:
    """What is kept of each piece; one of which nothing was said is left out."""
    kinds = {one.tag: one.judged.dossier.kind for one in back.sheet.pieces}
    found = {one.tag: seen_of(office, kinds[one.tag], one) for one in back.pieces if one.tag in kinds}
    return {tag: seen for tag, seen in found.items() if not seen.is_empty}

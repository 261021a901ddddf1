"""The command for the list that the club kept before: what would become of each row, and the import itself."""

from collections.abc import Callable, Mapping, Sequence
from functools import reduce
from pathlib import Path
from typing import Any

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties.import_list import Known, dry_run, imports, matching_of, read_list, sheet_called, take
from inspector.duties.importing.columns import meanings
from inspector.duties.importing.corrections import column_called, with_answer, with_meaning
from inspector.duties.left_rows import write_left, write_left_again
from inspector.duties.office import Office
from inspector.duties.tell_import import fate_counts, fate_word, what_is_told
from inspector.duties.withdraw_import import what_withdrawing_does, withdraw_import
from inspector.gear.import_list import Asks, Fate, Fates, Matching, RowFate, TableFile
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused

_MOST_ROWS = 40
_TOLD = {Asks.UNIT: "unit", Asks.BASIS: "basis", Asks.DECIMAL: "decimal", Asks.ORDER: "dates"}


def _about_columns(command: Callable[..., Any]) -> Callable[..., Any]:
    """The options by which columns are corrected and questions answered."""
    several = [
        ("--column", "columns", 'What a column means, by letter or heading: "C=rating"; may be given again.'),
        ("--unit", "unit", 'The unit of a column\'s figures: "C=t"; may be given again.'),
        ("--basis", "basis", 'Whether a column has wll or mbs: "C=mbs"; may be given again.'),
        ("--decimal", "decimal", 'The sign before fractions in a column: "C=,"; may be given again.'),
        ("--dates", "order", 'The order of a column\'s days, dmy, mdy, ymd or count: "D=dmy"; may be given again.'),
    ]
    options = [click.option(name, key, multiple=True, help=text) for name, key, text in several]
    return reduce(lambda made, option: option(made), reversed(options), command)


@click.command("import")
@click.argument("file", required=False, type=click.Path(path_type=Path))
@click.option("--take", "takes", is_flag=True, help="Take the rows that pass; without it nothing is kept.")
@click.option("--sheet", default="", help="Which sheet of a workbook.")
@click.option("--head", type=int, default=None, help="The row of the headings; 0 where there are none.")
@click.option("--photos", type=click.Path(path_type=Path), help="The folder with photos, named in a column or by tag.")
@_about_columns
@click.option("--ratings-from", "stated_on", type=click.Choice(["piece", "certificate", "memory"]), default=None,
              help="Where the ratings of the list were read off.")  # fmt: skip
@click.option("--shared-serials", is_flag=True, help="Pieces that bear the same serial are different ones.")
@click.option("--encoding", default="", help="The alphabet of a CSV file, for example cp1252.")
@click.option("--delimiter", default="", help="The sign between the cells of a CSV file.")
@click.option("--all", "every", is_flag=True, help="Tell every row, also those that are taken.")
@click.option("--list", "lists", is_flag=True, help="List the imports.")
@click.option("--left", default="", help="Write the rows that the import of this number did not take anew.")
@click.option("--withdraw", default="", help="Withdraw the import of this number.")
@click.option("--why", default="", help="Why it is withdrawn; without it is only told what would be.")
@click.option("--leave-later", is_flag=True, help="Pieces of which more was written down since stay.")
@click.pass_obj
def import_command(desk: Desk, /, file: Path | None, **more: Any) -> None:
    """Bring in the list that the club kept before: FILE is CSV, XLSX, ODS or XLS.

    Without --take it only tells what each column means, what is not clear, and what would become of each row. What is
    not taken is written into a file beside, with the reason. Nothing that a list says passes a piece: each is held
    until somebody competent has inspected it.
    """
    office = desk.office()
    if more["withdraw"]:
        _withdraw(office, more["withdraw"], more["why"], leave_later=more["leave_later"])
    elif more["lists"]:
        _list(office)
    elif more["left"]:
        _say_left(write_left_again(office, more["left"], Path.cwd()))
    elif file:
        _import(office, file, more)
    else:
        raise Refused(tr("file"), tr("No file was named."), tr("Name the file with the list, or use --list."))


def _import(office: Office, path: Path, more: Mapping[str, Any]) -> None:
    file = read_list(path, Known(more["encoding"], more["delimiter"].replace("\\t", "\t")))
    matching = _matching(office, file, more)
    run = dry_run(office, file, matching, more["photos"])
    _say_columns(office, run)
    _say_questions(run)
    _say_rows(run, every=more["every"])
    if not more["takes"]:
        say.paragraph(tr("Nothing was kept. With --take the rows that pass are taken."))
        return
    made = take(office, run)
    pieces = tr_n("{count} piece was taken.", "{count} pieces were taken.", len(made.pieces))
    say.paragraph(tr("Import {number}: {pieces}", number=made.number, pieces=pieces))
    for line in made.told:
        say.paragraph(line, "  ")
    _say_left(write_left(office, made, path.parent))


def _matching(office: Office, file: TableFile, more: Mapping[str, Any]) -> Matching:
    """The proposal with everything that was said on the command line."""
    from msgspec.structs import replace

    matching = matching_of(office, file, more["sheet"], more["head"])
    sheet = sheet_called(file, matching.sheet)
    for name, value in _pairs(more["columns"], tr("column")):
        at = column_called(matching, name).at
        matching = with_meaning(office, sheet, matching, at, "" if value == "left_out" else value)
    for about, key in ((one, one.value) for one in Asks):
        for name, value in _pairs(more[key], _TOLD[about]):
            matching = with_answer(matching, column_called(matching, name).at, about, value)
    stated_on = more["stated_on"] or matching.stated_on
    return replace(matching, stated_on=stated_on, shared_serials=more["shared_serials"] or matching.shared_serials)


def _pairs(texts: Sequence[str], field: str) -> list[tuple[str, str]]:
    return [typed.pair(one, field) for one in texts]


def _say_columns(office: Office, run: Fates) -> None:
    words = dict(meanings(office))
    for line in run.told:
        say.paragraph(line + ".")
    say.heading(tr("What the columns mean"))
    told = [(one.letter, one.heading, words[one.field], what_is_told(one)) for one in run.matching.columns]
    say.table((tr("column"), tr("heading"), tr("means"), tr("read as")), told)


def _say_questions(run: Fates) -> None:
    if run.questions:
        say.heading(tr("What can be read in two ways"))
    for one in run.questions:
        letter = run.matching.columns[one.at].letter
        answers = ", ".join(f"{key} ({words})" if words != key else key for key, words in one.choices)
        now = tr("taken as {answer}", answer=one.answer) if one.answer else tr("not told: such rows are not taken")
        option = f"--{_TOLD[one.about]} {letter}=…"
        say.paragraph(f"{letter}: {one.asks} {now}. {option}: {answers}", "  ", "      ")


def _say_rows(run: Fates, *, every: bool) -> None:
    say.heading(tr("What becomes of each row"))
    say.paragraph(fate_counts(run))
    shown = [one for one in run.rows if every or one.fate in {Fate.REFUSED, Fate.DUPLICATE} or one.told]
    for one in shown if every else shown[:_MOST_ROWS]:
        _say_row(one)
    if not every and len(shown) > _MOST_ROWS:
        say.paragraph(tr_n("And {count} more; --all tells them.", "And {count} more; --all tells them.",
                           len(shown) - _MOST_ROWS))  # fmt: skip


def _say_row(row: RowFate) -> None:
    head = f"{row.number:>5}  {fate_word(row.fate)}  {row.tag}".rstrip()
    say.paragraph(f"{head}: {row.why} {row.what_to_do}".rstrip(" :"), "", "       ")
    for line in row.told:
        say.paragraph(line, "       ")
    if row.beside:
        theirs = tr("in {like}", like=row.like) if row.fate is Fate.DUPLICATE else ""
        lines = [(one.name, one.ours or "–", one.theirs or "–") for one in row.beside]
        say.table(("       ", tr("this row"), theirs), [(f"       {name}", ours, other) for name, ours, other in lines])


def _say_left(path: Path | None) -> None:
    if path:
        say.paragraph(tr("What was not taken stands, with the reason, in {file}", file=path))
    else:
        say.paragraph(tr("Every row with a piece was taken."))


def _list(office: Office) -> None:
    every = imports(office)
    if not every:
        say.paragraph(tr("No list was brought in yet."))
        return
    rows = [(one.number, show_day(one.on), str(len(one.pieces)), str(len(one.left)), one.file) for one in every]
    say.table((tr("number"), tr("day"), tr("taken"), tr("left"), tr("file")), rows)


def _withdraw(office: Office, number: str, why: str, *, leave_later: bool) -> None:
    if not why:
        found = what_withdrawing_does(office, number)
        free, later = len(found.free), ", ".join(f"{tag} ({what})" for tag, what in found.later)
        say.paragraph(tr_n("{count} piece would be withdrawn.", "{count} pieces would be withdrawn.", free))
        if later:
            say.paragraph(tr("More was written down of these since: {named}.", named=later))
        say.paragraph(tr("Nothing was kept. Say --why to withdraw them."))
        return
    done = withdraw_import(office, number, why, leave_later=leave_later)
    say.paragraph(tr_n("{count} piece was withdrawn.", "{count} pieces were withdrawn.", len(done.free)))
    if done.later:
        say.paragraph(tr("These stay: {tags}.", tags=", ".join(tag for tag, _ in done.later)))

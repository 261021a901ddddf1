"""Text for a terminal: tables, paragraphs, verdicts. Plain signs, so that it prints on paper too."""

import shutil
import textwrap
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

import click

from inspector.gear.judged import Judged
from inspector.gear.verdict import Fact, Reason, Status
from inspector.language import tr, within

if TYPE_CHECKING:
    from inspector.duties.out_tray import Paper

_WIDEST = 110


def width() -> int:
    """The columns to fill."""
    return min(shutil.get_terminal_size((100, 24)).columns, _WIDEST)


def paragraph(text: str, indent: str = "", hanging: str | None = None) -> None:
    """Print a text wrapped to the terminal."""
    after = indent if hanging is None else hanging
    click.echo(textwrap.fill(text, width(), initial_indent=indent, subsequent_indent=after))


def heading(text: str) -> None:
    """Print a heading with a rule under it."""
    click.echo(f"\n{text}\n{'─' * min(len(text), width())}")


def table(head: Sequence[str], rows: Iterable[Sequence[str]]) -> None:
    """Print columns; the last one takes what is left of the line and wraps."""
    lines = [tuple(row) for row in rows]
    wide = [max(len(row[at]) for row in [tuple(head), *lines]) for at in range(len(head) - 1)]
    left = max(width() - sum(wide) - 2 * len(wide), 20)
    for row in [tuple(head), *lines]:
        _row(row, wide, left)


def _row(row: Sequence[str], wide: Sequence[int], left: int) -> None:
    start = "".join(cell.ljust(size + 2) for cell, size in zip(row[:-1], wide, strict=True))
    wrapped = textwrap.wrap(row[-1], left) or [""]
    for number, line in enumerate(wrapped):
        click.echo((start if number == 0 else " " * len(start)) + line)


def facts(lines: Iterable[Fact], indent: str = "  ") -> None:
    """Print labelled lines, labels in one column."""
    listed = tuple(lines)
    wide = max((len(line.label) for line in listed), default=0)
    for line in listed:
        paragraph(line.text, indent + line.label.ljust(wide + 2), indent + " " * (wide + 2))


def verdict(outcome: Judged) -> None:
    """Print a verdict with its reasons and the sums behind it."""
    words = outcome.explanation
    paragraph(f"{outcome.dossier.item.tag}  {words.headline}", "  ", "      ")
    for reason in _told_in_full(words.reasons):
        _reason(reason)
    _missing([one for one in words.reasons if one not in _told_in_full(words.reasons)])
    paragraph(words.plain, "    ")
    facts(words.sums, "    ")
    if words.terms:
        click.echo("    " + tr("Words of the trade:"))
        facts(words.terms, "      ")


def passes(outcome: Judged, *, sources: bool) -> None:
    """Print what the piece passed, each with its source or in one paragraph without."""
    passed = [one for one in outcome.explanation.passes if one.status is Status.PASSES]
    if not sources:
        sentences = dict.fromkeys(one.sentence for one in passed)
        paragraph(tr("Passed: {what}", what=" ".join(sentences)), "    ")
        return
    for title, status in ((tr("Passed:"), Status.PASSES), (tr("Noted, no hindrance:"), Status.NOTE)):
        _listed(title, [one for one in outcome.explanation.passes if one.status is status])
    _listed(tr("Answered:"), [one for one in outcome.explanation.passes if one.status is Status.ANSWERED])


def _listed(title: str, reasons: Sequence[Reason]) -> None:
    if reasons:
        click.echo("    " + title)
    for line in dict.fromkeys(f"{one.sentence} [{one.source}]" for one in reasons):
        paragraph(line, "    · ", "      ")


def paper(printed: "Paper") -> None:
    """Print where a document lies, and which signs of it could not be printed."""
    click.echo(str(printed.path))
    if printed.missing:
        signs = " ".join(printed.missing)
        paragraph(tr("These signs are not in the type and stand as empty squares: {signs}", signs=signs))


def verdict_in_full(outcome: Judged, more: str = "") -> None:
    """Print a verdict with what stands beside every one. more: what else is to be known now."""
    verdict(outcome)
    if more:
        paragraph(more, "  ")
    cautions(outcome)


def cautions(outcome: Judged) -> None:
    """Print what stands beside every verdict."""
    click.echo()
    for caution in outcome.explanation.cautions:
        paragraph(caution)


def _told_in_full(reasons: Sequence[Reason]) -> list[Reason]:
    """Every fault, and the first thing that is missing; the rest of what is missing goes into one line."""
    unknown = [one for one in reasons if one.status is Status.UNKNOWN]
    return [one for one in reasons if one not in unknown[1:]]


def _missing(reasons: Sequence[Reason]) -> None:
    names = list(dict.fromkeys(one.what for one in reasons))
    if names:
        paragraph(tr("Not known either: {what}.", what=", ".join(map(within, names))), "    – ", "      ")


def _reason(reason: Reason) -> None:
    spoken_to = f" ({reason.purposes})" if reason.purposes else ""
    paragraph(f"{reason.sentence}{spoken_to} {reason.why}", "    – ", "      ")
    paragraph(tr("value: {value} · limit: {limit}", value=reason.value, limit=reason.limit), "      ")
    paragraph(tr("source: {source} · rule: {rule}", source=reason.source, rule=reason.rule), "      ")

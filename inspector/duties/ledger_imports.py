"""Sentences of the ledger about lists that were brought in and withdrawn."""

from inspector.duties.ledger_line import Line, Sentence, listed, said
from inspector.language import tr, tr_n


def _taken(line: Line) -> str:
    tags, left = line.texts("tags"), int(line.facts["left"])
    kept_out = tr_n("; {count} row was not taken", "; {count} rows were not taken", left) if left else ""
    return tr(
        "{who} brought in {pieces} from the list {file} (import {number}): {tags}{left}.",
        who=line.who,
        pieces=tr_n("{count} piece", "{count} pieces", len(tags)),
        file=line.text("file"),
        number=line.text("import"),
        tags=listed(tags),
        left=kept_out,
    )


def _withdrawn(line: Line) -> str:
    tags, stay = line.texts("tags"), line.texts("stay")
    staying = tr("; these stay: {tags}", tags=listed(stay)) if stay else ""
    return tr(
        "{who} withdrew {pieces} of the import {number}: {tags}{stay}{why}.",
        who=line.who,
        pieces=tr_n("{count} piece", "{count} pieces", len(tags)),
        number=line.text("import"),
        tags=listed(tags),
        stay=staying,
        why=said(line.text("why")),
    )


SENTENCES: dict[str, Sentence] = {"import list": _taken, "withdraw import": _withdrawn}

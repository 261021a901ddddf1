"""Sentences of the ledger about papers that go with the gear: tags, labels, lending slips."""

from inspector.duties.ledger_line import Line, Sentence, listed
from inspector.language import later, tr


def _for_pieces(what: str) -> Sentence:
    """A sentence about a paper for several pieces. what: with {who}, {number} and {tags}."""

    def told(line: Line) -> str:
        return tr(what, who=line.who, number=line.text("number"), tags=listed(line.texts("tags")))

    return told


def _lending_slip(line: Line) -> str:
    return tr(
        "{who} printed the lending slip {number} for {name}: {tags}.",
        who=line.who,
        number=line.text("number"),
        name=line.name(line.text("holder")),
        tags=listed(line.texts("tags")),
    )


SENTENCES: dict[str, Sentence] = {
    "print tags": _for_pieces(later("{who} printed the tags {number} for {tags}.")),
    "print labels": _for_pieces(later("{who} printed the labels {number} for {tags}.")),
    "print lending slip": _lending_slip,
}

"""Sentences of the ledger about where pieces are: put away, missing, stolen, sold, given back, found again."""

from inspector.duties.ledger_line import Line, Sentence, said
from inspector.gear.whereabouts import NewWhereabouts
from inspector.language import later, show_day, tr


def _moved(what: str) -> Sentence:
    """A sentence about where a piece is. what: with {name}, {tag}, {place}, {to}, {paper}, {day} and {why}."""

    def told(line: Line) -> str:
        facts = line.shape("as", NewWhereabouts)
        words = {"place": facts.place, "to": facts.to, "paper": facts.paper, "day": show_day(facts.on)}
        return tr(what, name=line.name(facts.by), tag=line.text("tag"), why=said(facts.why), **words)

    return told


def _voucher(line: Line) -> str:
    return tr(
        "{who} printed the voucher {number} of {tag}.", who=line.who, number=line.text("number"), tag=line.text("tag")
    )


SENTENCES: dict[str, Sentence] = {
    "put in store": _moved(later("{name} put {tag} in store at {place} on {day}{why}.")),
    "report missing": _moved(later("{name} reported {tag} missing since {day}, last seen: {place}{why}.")),
    "report stolen": _moved(
        later("{name} reported {tag} stolen since {day}, last seen: {place}; report {paper}{why}.")
    ),
    "print voucher": _voucher,
    "sell": _moved(later("{name} wrote down that {tag} was sold to {to} on {day}{why}.")),
    "hand to owner": _moved(later("{name} wrote down that {tag} went back to its owner {to} on {day}{why}.")),
    "report found": _moved(later("{name} wrote down that {tag} is here again since {day}, at {place}{why}.")),
}

"""Sentences of the ledger about the club, its people and its rulebook."""

from datetime import date

from inspector.duties.ledger_line import Line, Sentence, listed
from inspector.language import show_day, tr, tr_n


def _founded(line: Line) -> str:
    return tr("The register of {club} was begun.", club=line.text("club"))


def _officer(line: Line) -> str:
    return tr("{name} became equipment officer of the club.", name=line.name(line.text("id")))


def _person(line: Line) -> str:
    name = line.name(line.text("id"))
    if line.by not in line.names:  # an empty register has nobody at the desk yet
        return tr("{name} was the first to be written into the register.", name=name)
    return tr("{who} wrote {name} into the register.", who=line.who, name=name)


def _adopted(line: Line) -> str:
    day = show_day(date.fromisoformat(line.text("from")))
    retires = tr(" It was known to retire {tags}.", tags=listed(line.texts("retires"))) if line.texts("retires") else ""
    if not line.text("club"):
        return tr("{who} adopted the packaged rulebook from {day} on.", who=line.who, day=day) + retires
    return (
        tr(
            "{who} adopted the rulebook “{title}” of {club} from {day} on, with {changes}.",
            who=line.who,
            title=line.text("title"),
            club=line.text("club"),
            day=day,
            changes=tr_n("one change", "{count} changes", len(line.many("changes"))),
        )
        + retires
    )


def _in_force(line: Line) -> str:
    count = len(line.texts("tags"))
    judged = tr_n("One piece was judged anew by it.", "{count} pieces were judged anew by it.", count)
    return tr("Another rulebook came into force.") + f" {judged}"


def _wants(line: Line) -> str:
    words = {
        "club": tr("its name is {text}"),
        "units": tr("its units are {text}"),
        "paper": tr("its paper is {text}"),
        "decimal": tr("its decimal sign is “{text}”"),
    }
    if "mark" in line.facts:
        words["mark"] = tr("a mark stands on its documents") if line.text("mark") else tr("its documents bear no mark")
    told = [words[key].format(text=line.text(key)) for key in line.facts if key in words]
    return tr("{who} wrote down what the club wants: {told}.", who=line.who, told=listed(told))


def _moved_away(line: Line) -> str:
    return tr("{who} moved the register to {to}; here it ends.", who=line.who, to=line.text("to"))


def _arrived(line: Line) -> str:
    return tr("The register goes on here, after the line {head}.", head=line.text("head")[:8])


SENTENCES: dict[str, Sentence] = {
    "found club": _founded,
    "name officer": _officer,
    "add person": _person,
    "adopt rulebook": _adopted,
    "club settings": _wants,
    "rulebook in force": _in_force,
    "move away": _moved_away,
    "arrive": _arrived,
}

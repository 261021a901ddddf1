"""What a piece was booked with, in words: the head of its record and of its papers."""

from inspector.gear.dossier import Dossier
from inspector.gear.item import NewItem
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.rulebook.words import fitted_words, fixing_word, marked_words, provenance_word


def _visit(facts: NewItem) -> str:
    """For which trip alone somebody else's piece came along."""
    if facts.visiting_until is None:
        return ""
    return tr("for {trip} alone, to {day}", trip=facts.visiting_for, day=show_day(facts.visiting_until))


def piece_facts(dossier: Dossier) -> tuple[Fact, ...]:
    """What was written down of the piece, each fact under its name; what nobody wrote is left out."""
    item, facts = dossier.item, dossier.item.facts
    lines = [
        Fact(tr("Tag"), item.tag),
        Fact(tr("Kind"), dossier.kind.name),
        Fact(tr("Marked"), marked_words(item)),
        Fact(tr("Maker's mark"), facts.maker_mark),
        Fact(tr("Serial or batch"), facts.serial),
        Fact(tr("Owner"), facts.owner),
        Fact(tr("Place"), facts.place),
        Fact(tr("Past"), provenance_word(facts.provenance)),
        Fact(tr("From"), facts.from_whom),
        Fact(tr("Paper"), facts.paper),
        Fact(tr("To go back by"), show_day(facts.borrowed_until) if facts.borrowed_until else ""),
        Fact(tr("Came along"), _visit(facts)),
        Fact(tr("Made"), show_day(facts.made_on) if facts.made_on else ""),
        Fact(tr("In service since"), show_day(facts.in_service_on) if facts.in_service_on else ""),
        Fact(tr("Booked in"), show_day(item.booked_on)),
        Fact(tr("Fitted to"), fitted_words(facts.fitted) if facts.fitted else ""),
        Fact(tr("Fixed by"), fixing_word(facts.fixed_by)),
    ]
    sizes = {size.key: size.name for size in dossier.kind.sizes}
    as_new = [f"{sizes.get(one.key, one.key)} {one.figure.as_typed}" for one in facts.sizes]
    lines.append(Fact(tr("As new"), ", ".join(as_new)))
    return tuple(line for line in lines if line.text)

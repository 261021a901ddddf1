"""What a piece was booked with, in words: the head of its record and of its papers."""

from inspector.gear.dossier import Dossier
from inspector.gear.item import Fixing, NewItem
from inspector.gear.verdict import Fact
from inspector.language import once_a_language, show_day, tr
from inspector.rulebook.words import fitted_words, marked_words, provenance_word


def _visit(facts: NewItem) -> str:
    """For which trip alone somebody else's piece came along."""
    if facts.visiting_until is None:
        return ""
    return tr("for {trip} alone, to {day}", trip=facts.visiting_for, day=show_day(facts.visiting_until))


def _fixing_word(fixing: Fixing) -> str:
    """What holds it to the vehicle; nothing where nobody wrote it down."""
    return _fixing_words()[fixing]


@once_a_language
def _fixing_words() -> dict[Fixing, str]:
    return {
        Fixing.UNKNOWN: "",
        Fixing.BOLTS: tr("bolts"),
        Fixing.WELDS: tr("welded on, without bolts: its welds are what is checked"),
    }


def piece_facts(dossier: Dossier) -> tuple[Fact, ...]:
    """What was written down of the piece, each fact under its name; what nobody wrote is left out."""
    item, facts = dossier.item, dossier.item.facts
    sizes = {size.key: size.name for size in dossier.kind.sizes}
    told = (
        item.tag,
        dossier.kind.name,
        marked_words(item),
        facts.maker_mark,
        facts.serial,
        facts.owner,
        facts.place,
        provenance_word(facts.provenance),
        facts.from_whom,
        facts.paper,
        show_day(facts.borrowed_until) if facts.borrowed_until else "",
        _visit(facts),
        show_day(facts.made_on) if facts.made_on else "",
        show_day(facts.in_service_on) if facts.in_service_on else "",
        show_day(item.booked_on),
        fitted_words(facts.fitted) if facts.fitted else "",
        _fixing_word(facts.fixed_by),
        ", ".join([f"{sizes.get(one.key, one.key)} {one.figure.as_typed}" for one in facts.sizes]),
    )
    return tuple([Fact(label, text) for label, text in zip(_labels(), told, strict=True) if text])


@once_a_language
def _labels() -> tuple[str, ...]:
    """The names of what is told of a piece, in its order."""
    return (
        tr("Tag"),
        tr("Kind"),
        tr("Marked"),
        tr("Maker's mark"),
        tr("Serial or batch"),
        tr("Owner"),
        tr("Place"),
        tr("Past"),
        tr("From"),
        tr("Paper"),
        tr("To go back by"),
        tr("Came along"),
        tr("Made"),
        tr("In service since"),
        tr("Booked in"),
        tr("Fitted to"),
        tr("Fixed by"),
        tr("As new"),
    )

"""What a part on a vehicle is for a rig: its marking, how it is fixed, what may be joined to it, what a winch pulls."""

from inspector.gear.item import BOLT_COUNT, Fixing, Item
from inspector.gear.judged import Judged
from inspector.gear.rig import RigPiece
from inspector.gear.rig_result import RigOutcome
from inspector.language import tr
from inspector.mechanics import drum
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.loads import stall_of
from inspector.rulebook.rigs.saying import Account
from inspector.rulebook.words import listed, marked_words
from inspector.units import Dimension, System, show

_NAMED = ("shackle", "soft", "stretch", "hook", "pin", "insert")


def part_words(judged: Judged, book: Rulebook, system: System) -> tuple[str, ...]:
    """Lines about a fitted part, for its vehicle's record."""
    item = judged.dossier.item
    lines = [tr("Marked: {marked}.", marked=marked_words(item)), _fixed(item), _takes(judged, book)]
    if judged.dossier.kind.key == "winch":
        lines += _pulls(judged, book, system)
    return tuple(line for line in lines if line)


def _fixed(item: Item) -> str:
    """How it is held, as far as it was written down."""
    if item.facts.fixed_by is Fixing.WELDS:
        return tr("Held by welds.")
    count, thick, grade = (item.size(key) for key in (BOLT_COUNT, "bolt_diameter", "bolt_class"))
    if count is None:
        return ""
    said = [tr("{count} bolts", count=f"{count.si:.0f}")]
    said += [thick.as_typed] if thick else []
    said += [tr("class {grade}", grade=grade.as_typed)] if grade else []
    return tr("Held by {bolts}.", bolts=", ".join(said))


def _takes(judged: Judged, book: Rulebook) -> str:
    """What may be joined to it, what with care, and what never."""
    role = book.roles[judged.dossier.kind.key]
    if not role.fitted:
        return ""
    words = {
        "shackle": tr("a shackle"),
        "soft": tr("a soft shackle"),
        "stretch": tr("a strap's eye"),
        "hook": tr("a hook"),
        "pin": tr("a hitch pin with its insert"),
        "insert": tr("an insert without a pin"),
    }
    by: dict[RigOutcome, list[str]] = {outcome: [] for outcome in RigOutcome}
    for other in _NAMED:
        joint = next((one for one in book.joints if one.fits(role.key, other)), None)
        if joint is not None:
            by[joint.outcome].append(words[other])
    said = {
        RigOutcome.SOUND: tr("takes {what}"),
        RigOutcome.CAUTION: tr("with care {what}"),
        RigOutcome.NEVER: tr("never {what}"),
    }
    parts = [text.format(what=listed(by[outcome])) for outcome, text in said.items() if by[outcome]]
    text = "; ".join(parts)
    return f"{text[:1].upper()}{text[1:]}." if text else ""


def _pulls(judged: Judged, book: Rulebook, system: System) -> list[str]:
    """What a winch pulls on each layer of its drum, and the pull at which it stalls."""
    item, account = judged.dossier.item, Account(book, system)
    try:
        rated_n, stall_n = stall_of(RigPiece(judged), account)
    except Refused as refusal:
        return [refusal.why]
    layers = item.size("drum_layers")
    count = int(layers.si) if layers else 1
    pulls = [show(drum.layer_pull_n(rated_n, layer), Dimension.FORCE, system) for layer in range(1, count + 1)]
    source = book.source_text("winch_layers_trade")
    stalls = account.assumptions[-1]
    return [
        tr("Pulls by layer, the first first: {pulls} [{source}].", pulls=", ".join(pulls), source=source),
        tr("Stalls at {stall} ({why}).", stall=show(stall_n, Dimension.FORCE, system), why=stalls.why.rstrip(".")),
    ]

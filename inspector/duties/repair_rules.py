"""What may be done to a piece of which kind, and what never: each refusal says why and what to do instead."""

import re

from inspector.gear.item import BOLT_COUNT, Item
from inspector.gear.kind import Kind
from inspector.gear.repair import NewRepair, Work
from inspector.language import tr, within
from inspector.refused import Refused

PIN, BODY, BOLTS_SOUND = "pin_diameter", "bow_diameter", "bolts_sound"
_TELLS_OF_HARM = (
    (re.compile(r"\b(\w*weld|braz)", re.IGNORECASE), Work.WELDED),
    (re.compile(r"\b(heat(ed|ing)|torch)", re.IGNORECASE), Work.HEATED),
    (re.compile(r"\b(straighten|bent (back|straight)|hammered (back|straight))", re.IGNORECASE), Work.STRAIGHTENED),
    (re.compile(r"\b(drill|ream)", re.IGNORECASE), Work.DRILLED),
    (re.compile(r"\b(grind|ground|filed|filing)\b", re.IGNORECASE), Work.GROUND),
)


def check_work(item: Item, kind: Kind, facts: NewRepair) -> None:
    """Refuse work that nobody may do on gear that carries a pull, and work that this kind of piece cannot have."""
    _check_harmless(item, facts)
    wrong = {
        Work.PIN_AND_BOW: _why_no_pin,
        Work.HOOK_LATCH: _why_no_latch,
        Work.RESPLICED: _why_no_splice,
        Work.BOLTS: _why_no_bolts,
        Work.GALVANISED: _why_no_zinc,
    }.get(facts.work)
    if wrong and (said := wrong(item, kind)):
        raise Refused(tr("work"), *said)


def _check_harmless(item: Item, facts: NewRepair) -> None:
    told = facts.work
    if facts.work in {Work.OTHER, Work.CLEANED}:
        text = f"{facts.part} {facts.note}"
        told = next((work for sign, work in _TELLS_OF_HARM if sign.search(text)), told)
    why = {
        Work.WELDED: tr("A weld changes the steel beside it; it can cost a forged shackle 30 % of its strength."),
        Work.HEATED: tr("Heat takes the hardness that the piece's strength rests on, and nothing shows it."),
        Work.STRAIGHTENED: tr("What was bent and is bent back has been cracked or hardened where nobody sees it."),
        Work.DRILLED: tr("A new hole takes section and begins a crack where the maker reckoned with sound steel."),
        Work.GROUND: tr("What is filed or ground off is strength, and it hides what it takes away."),
    }.get(told)
    if why:
        what = tr(
            "Never do it to gear that carries a pull. If it was done, log an inspection of {tag} that says so; a piece "
            "that its maker made anew and certified is booked in as another piece.",
            tag=item.tag,
        )
        raise Refused(tr("work"), why, what)


_Why = tuple[str, str] | None


def _why_no_pin(item: Item, kind: Kind) -> _Why:
    if kind.family == "shackle" and item.size(PIN):
        return None
    return tr("A {kind} has no pin and bow.", kind=within(kind.name)), tr("Say what was done, or choose “other”.")


def _why_no_latch(item: Item, kind: Kind) -> _Why:
    if kind.check("latch"):
        return None
    return tr("A {kind} has no latch.", kind=within(kind.name)), tr("Look at the label again; is it this piece?")


def _why_no_splice(item: Item, kind: Kind) -> _Why:
    if kind.check("splices") is None:
        what = tr("A sewn or knotted piece is made anew by its maker and booked in as another piece.")
        return tr("A {kind} has no splice.", kind=within(kind.name)), what
    if kind.measure("length"):
        why = tr("Its stretch is told by its length as new, and its splices bear the jerk of every pull.")
        return why, tr("Have its maker make it anew, and book it in as another piece with the maker's paper.")
    return None


def _why_no_bolts(item: Item, kind: Kind) -> _Why:
    if item.size(BOLT_COUNT) and not item.is_welded_on:
        return None
    why = tr("No bolts are written down for {tag}.", tag=item.tag)
    return why, tr("Look at the label again; a part that welds hold has none.")


def _why_no_zinc(item: Item, kind: Kind) -> _Why:
    if kind.measure("wall"):
        return None
    if "steel" not in kind.material:
        return tr("A {kind} is not of steel.", kind=within(kind.name)), tr("Look at the label again; is it this piece?")
    why = tr(
        "Its steel may be hardened: acid before the bath can make it brittle (common practice, no source), and "
        "molten zinc is about 450 °C (from memory), while a trade sheet ends a shackle's use at 400 °C (second hand)."
    )
    return why, tr("Keep it clean and oiled, or ask its maker. If it was done already, doubt the piece: that holds it.")

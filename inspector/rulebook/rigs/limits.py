"""What each piece at hand could take in a rig, before any rig is drawn: the quick sums of the search for the best one.

A piece's limit is the force at which it has used up what it may bear: its strength on the day over what it must keep.
"""

import math

from msgspec import Struct

from inspector.gear.rig import Conditions, Method, RigFacts, RigPiece
from inspector.language import tr
from inspector.mechanics import fibre
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rig_texts import Role
from inspector.rulebook.rigs.layout import bar_behind
from inspector.rulebook.rigs.links import PURPOSES, barred_why, own_strength, usual_margin, wet_loss
from inspector.rulebook.rigs.strap_band import TOO_WEAK, strap_fit

_WANTED = {
    Method.KINETIC: {"point", "receiver", "bar", "pin", "insert", "shackle", "soft", "stretch", "bridle"},
    Method.TOW_OUT: {"point", "receiver", "bar", "pin", "insert", "shackle", "soft", "strap", "bridle"},
    Method.WINCH: {"point", "receiver", "bar", "pin", "insert", "shackle", "soft", "winch", "line", "block"},
}


class Limited(Struct, frozen=True):
    """A piece that may serve, its tag and role, its strength in newtons and the force at which that is used up."""

    piece: RigPiece
    tag: str
    role: str
    strength_n: float
    limit_n: float


class Asked(Struct, frozen=True):
    """What a rig is sought for."""

    method: Method
    pulling: str
    bogged: str
    conditions: Conditions


def limited(piece: RigPiece, asked: Asked, book: Rulebook) -> Limited | str:
    """The piece with its limit, or why it cannot serve."""
    why = barred_why(piece, PURPOSES[asked.method])
    if why:
        return why
    text = book.roles[piece.kind]
    length = piece.judged.dossier.item.size("length")
    if text.stretch_least and (length is None or length.si <= 0):
        return tr("Its length was not written down.")
    if text.key == "winch":
        return Limited(piece, piece.tag, text.key, math.inf, math.inf)
    dry_n, unknown, _ = own_strength(piece, text.key)
    if dry_n is None:
        return unknown
    strength_n = fibre.strength_left_n(dry_n, wet_loss(text, asked.conditions.wet))
    return Limited(piece, piece.tag, text.key, strength_n, strength_n / usual_margin(book, asked.method, text))


def sorted_out(asked: Asked, facts: RigFacts, book: Rulebook) -> tuple[tuple[Limited, ...], dict[str, str]]:
    """The pieces that may serve, and of the others why not."""
    able: list[Limited] = []
    unable: dict[str, str] = {}
    lighter_kg = min(facts.vehicles[tag].gvm.si for tag in (asked.bogged, asked.pulling))
    for tag, piece in facts.pieces.items():
        role = book.roles[piece.kind]
        if role.key not in _WANTED[asked.method]:
            continue
        if _sits_elsewhere(piece, role, asked):
            unable[tag] = tr("It sits on neither of the two vehicles.")
            continue
        found = limited(piece, asked, book)
        now_n = piece.judged.verdict.capacity.now_n
        if isinstance(found, str):
            unable[tag] = found
        elif role.key == "stretch" and now_n is not None and strap_fit(book, lighter_kg, now_n) == TOO_WEAK:
            unable[tag] = tr("It is too weak for the lighter vehicle.")
        else:
            able.append(found)
    unable |= {one.tag: why for one in able if (why := _why_bar(one, facts, unable))}
    return tuple(one for one in able if one.tag not in unable), unable


def _sits_elsewhere(piece: RigPiece, role: Role, asked: Asked) -> bool:
    """On a third vehicle, or, of what has to be fitted, on none."""
    if piece.fitted is None:
        return role.fitted
    return piece.fitted.vehicle not in {asked.bogged, asked.pulling}


def _why_bar(one: Limited, facts: RigFacts, unable: dict[str, str]) -> str:
    """Why the tow bar behind a receiver cannot serve, or that nobody knows one: the receiver hangs on it."""
    if one.role != "receiver":
        return ""
    try:
        bar = bar_behind(facts, one.piece)
    except Refused as refusal:
        return refusal.why
    if not bar:
        return tr("Nobody wrote down which tow bar carries it.")
    return tr("Its tow bar {bar} cannot serve. {why}", bar=bar, why=unable[bar]) if bar in unable else ""

"""Quantities that come from what was written down when the piece was booked in: its sizes as new, its maker."""

from inspector.gear.verdict import Known
from inspector.language import tr
from inspector.mechanics import coupling, shackle
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, unknown, word

ODD_PIN, THICKER_PIN = "odd", "thicker"
MISMATCHED, MATCHED = "mismatched", "matched"
INCOMPLETE = "incomplete"


def as_new(case: Case, key: str) -> Quantity:
    """One size of the piece as new."""
    figure = case.dossier.item.size(key)
    if figure is None:
        return unknown(tr("The size as new was not written down."))
    return number(figure.si, figure.dimension, tr("booking"), Known.STATED)


def weld_throat(case: Case) -> Quantity:
    """The throat of its weld as new; where nobody wrote it down, the strength says that the weld is left out."""
    return NOT_APPLICABLE if case.dossier.item.size("weld_throat") is None else as_new(case, "weld_throat")


def shackle_pin(case: Case) -> Quantity:
    """Whether the pin is thicker than the body, as in every size list, or an odd one."""
    pin, body = case.dossier.item.size("pin_diameter"), case.dossier.item.size("bow_diameter")
    if pin is None or body is None or pin.si <= 0 or body.si <= 0:
        return unknown(tr("The sizes of pin and body as new were not written down."))
    said = tr("pin {pin}, body {body} as new", pin=pin.as_typed, body=body.as_typed)
    return word(ODD_PIN if shackle.is_odd_pin(pin.si, body.si) else THICKER_PIN, said, Known.STATED)


def ball_in_coupler(case: Case) -> Quantity:
    """Whether the ball is of the size of the trailer's coupling, where that was written down."""
    ball, coupler = case.dossier.item.size("ball_diameter"), case.dossier.item.size("coupler")
    if coupler is None or coupler.si <= 0:
        return NOT_APPLICABLE  # the check of the ball's size asks for it at every inspection
    if ball is None or ball.si <= 0:
        return unknown(tr("The size as new was not written down."))
    said = tr("ball {ball}, coupling {coupler}", ball=ball.as_typed, coupler=coupler.as_typed)
    return word(MISMATCHED if coupling.is_ball_mismatched(ball.si, coupler.si) else MATCHED, said, Known.STATED)


def identity(case: Case) -> Quantity:
    """Whether the piece can be told by its maker and its batch or serial number."""
    facts = case.dossier.item.facts
    told = facts.maker_mark.strip() and facts.serial.strip()
    return word("known" if told else INCOMPLETE, tr("booking"), Known.STATED)

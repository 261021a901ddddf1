"""Quantities of the form in which a piece came in: for one trip alone, or made at home."""

from inspector.gear.item import Provenance
from inspector.gear.kind import Basis
from inspector.gear.verdict import Known
from inspector.language import tr
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, word
from inspector.units import Dimension


def visit_age(case: Case) -> Quantity:
    """Days since a piece came along for one trip; a piece of the register's own has no such days."""
    item = case.dossier.item
    if item.facts.visiting_until is None:
        return NOT_APPLICABLE
    days = (case.on - item.booked_on).days
    came = tr("came along for {trip}", trip=item.facts.visiting_for)
    return number(days, Dimension.DAYS, came, Known.COUNTED, measured_on=item.booked_on, per_day=1.0)


def visit_days(case: Case) -> Quantity:
    """Days from its entry to the last day of that trip, as the trip was planned when the piece came along."""
    item = case.dossier.item
    if item.facts.visiting_until is None:
        return NOT_APPLICABLE
    days = (item.facts.visiting_until - item.booked_on).days
    return number(days, Dimension.DAYS, tr("its entry"), Known.STATED)


def home_made_paper(case: Case) -> Quantity:
    """What stands for the strength of a home-made piece."""
    item = case.dossier.item
    if item.facts.provenance is not Provenance.HOME_MADE:
        return NOT_APPLICABLE
    rating = item.rating
    proven = rating.figure is not None and rating.basis is not Basis.UNRATED and rating.stated_on == "certificate"
    return word("certificate" if proven else "none", tr("booking"), Known.STATED)

"""What is typed about a piece that comes in, read into gear words."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from inspector.cli import typed
from inspector.duties.office import Office
from inspector.gear.fitting import End, Side
from inspector.gear.item import Fixing, NewItem, Provenance, Rating
from inspector.gear.kind import Basis
from inspector.gear.outcome import Purpose
from inspector.language import tr
from inspector.units import Dimension, read


def facts(office: Office, tag: str, key: str, rating: str, basis: str, factor: str, more: Mapping[str, Any]) -> NewItem:
    """A booking as the options of `inspector book` tell it."""
    kind = office.kind(key)
    return NewItem(
        tag=tag,
        kind=key,
        rating=rated(office, rating, basis, factor, more["stated_on"]),
        maker_mark=more["maker_mark"],
        serial=more["serial"],
        material=more["material"],
        sizes=typed.sizes(office, kind, more["sizes"]),
        owner=more["owner"],
        place=more["place"],
        provenance=Provenance(more["past"]),
        made_on=_day(office, more["made_on"]),
        in_service_on=_day(office, more["in_service_on"]),
        kept_for=tuple(Purpose(one) for one in more["kept_for"]),
        note=more["note"],
        fixed_by=Fixing(more["fixed_by"] or ""),
        fitted_to=more["fitted_to"],
        fitted_end=End(more["end"] or ""),
        from_whom=more["from_whom"].strip(),
        paper=more["paper"].strip(),
        borrowed_until=_day(office, more["borrowed_until"]),
        fitted_side=Side(more["side"] or ""),
    )


def rated(office: Office, rating: str, basis: str, factor: str, stated_on: str | None) -> Rating:
    """A rating as it was typed. stated_on: None where nobody said where it was read, which is never guessed."""
    dimension = Dimension.MASS if basis == Basis.TOWED_MASS.value else Dimension.FORCE
    figure = read(rating, dimension, field=tr("rating"), decimal=office.decimal) if rating else None
    times = read(factor, Dimension.FACTOR, field=tr("design factor")).si if factor else None
    return Rating(Basis(basis), figure, times, stated_on or "")


def _day(office: Office, text: str) -> date | None:
    return typed.day(text, office.today) if text else None

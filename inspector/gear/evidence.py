"""Pieces that are kept as found after an incident, and who let them go."""

from datetime import date

from msgspec import Struct


class NewQuarantine(Struct, frozen=True):
    """A piece kept as found from a day on, for an incident (its reference). broke: it is what broke or let go."""

    on: date
    incident: str
    by: str
    broke: bool = False


class Quarantine(Struct, frozen=True):
    """A logged quarantine."""

    id: str
    item_id: str
    facts: NewQuarantine


class NewRelease(Struct, frozen=True):
    """Two competent persons let a piece go from an incident's evidence. It stays on hold until it is inspected.

    whole: they also answer that it broke there: why says how it is whole again, or that it was named wrongly.
    """

    on: date
    incident: str
    by: str
    second: str
    why: str
    whole: bool = False


class Release(Struct, frozen=True):
    """A logged release."""

    id: str
    item_id: str
    facts: NewRelease

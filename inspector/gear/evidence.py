"""Pieces that are kept as found after an incident, and who let them go."""

from datetime import date

from msgspec import Struct


class NewQuarantine(Struct, frozen=True):
    """A piece kept as found from a day on, for an incident (its reference)."""

    on: date
    incident: str
    by: str


class Quarantine(Struct, frozen=True):
    """A logged quarantine."""

    id: str
    item_id: str
    facts: NewQuarantine


class NewRelease(Struct, frozen=True):
    """Two competent persons let a piece go from an incident's evidence. It stays on hold until it is inspected."""

    on: date
    incident: str
    by: str
    second: str
    why: str


class Release(Struct, frozen=True):
    """A logged release."""

    id: str
    item_id: str
    facts: NewRelease

"""Pieces that are kept as found after an incident, and who let them go."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class NewQuarantine:
    """A piece kept as found from a day on, for an incident (its reference)."""

    on: date
    incident: str
    by: str


@dataclass(frozen=True, slots=True)
class Quarantine:
    """A logged quarantine."""

    id: str
    item_id: str
    facts: NewQuarantine


@dataclass(frozen=True, slots=True)
class NewRelease:
    """Two competent persons let a piece go from an incident's evidence. It stays on hold until it is inspected."""

    on: date
    incident: str
    by: str
    second: str
    why: str


@dataclass(frozen=True, slots=True)
class Release:
    """A logged release."""

    id: str
    item_id: str
    facts: NewRelease

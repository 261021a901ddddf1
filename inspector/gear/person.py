"""People: who did it, and whether they were competent to."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class Competence:
    """What a person may judge, and between which days (None: no end). scope: a family of kinds, or "all"."""

    scope: str
    since: date
    until: date | None = None


@dataclass(frozen=True, slots=True)
class Person:
    """A member of the club or somebody who acts for it. Contact details live elsewhere."""

    id: str
    name: str
    role: str
    competences: tuple[Competence, ...] = ()

    def is_competent(self, family: str, on: date) -> bool:
        """Whether this person may inspect the family of kinds on that day."""
        return any(
            held.scope in {family, "all"} and held.since <= on and (held.until is None or on <= held.until)
            for held in self.competences
        )


@dataclass(frozen=True, slots=True)
class NewPersonChange:
    """A person's name, role and competences from a day on, whole. by: a person's id."""

    on: date
    person: Person
    by: str
    why: str = ""


@dataclass(frozen=True, slots=True)
class Contact:
    """How to reach a person. Kept outside the history, so that it can be taken out on request."""

    phone: str = ""
    mail: str = ""
    address: str = ""

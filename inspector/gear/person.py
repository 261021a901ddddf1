"""People: who did it, and whether they were competent to."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.language import later, tr

_FAMILIES = {
    "ball": later("ball"), "block": later("block"), "damper": later("damper"), "hook": later("hook"),
    "insert": later("insert"), "pin": later("pin"), "point": later("point"), "rope": later("rope"),
    "shackle": later("shackle"), "strap": later("strap"), "tube": later("tube"), "winch": later("winch"),
}  # fmt: skip


class Competence(Struct, frozen=True):
    """What a person may judge, and between which days (None: no end). scope: a family of kinds, or "all"."""

    scope: str
    since: date
    until: date | None = None


class Person(Struct, frozen=True):
    """A member of the club or somebody who acts for it. Contact details live elsewhere.

    former_names: those this person went by before; gear written down as owned under one of them is still his.
    """

    id: str
    name: str
    role: str
    competences: tuple[Competence, ...] = ()
    former_names: tuple[str, ...] = ()

    def is_competent(self, family: str, on: date) -> bool:
        """Whether this person may inspect the family of kinds on that day."""
        return any(
            held.scope in {family, "all"} and held.since <= on and (held.until is None or on <= held.until)
            for held in self.competences
        )


class NewPersonChange(Struct, frozen=True):
    """A person's name, role and competences from a day on, whole. by: a person's id.

    second: the id of another person who stands behind a widened competence, where one was named. paper: what a
    competence that began before this day rests on.
    """

    on: date
    person: Person
    by: str
    why: str = ""
    second: str = ""
    paper: str = ""


class Passphrases(StrEnum):
    """What a club wants of whoever sits at the desk. Where nothing is asked, every name is as stated."""

    OFF = "off"
    WANTED = "wanted"  # who has one may prove who he is; else documents print his name as stated
    REQUIRED = "required"  # and a name that is only stated passes no gear


class Contact(Struct, frozen=True):
    """How to reach a person. Kept outside the history, so that it can be taken out on request."""

    phone: str = ""
    mail: str = ""
    address: str = ""


def scope_word(scope: str) -> str:
    """What a competence is for, in a word: all gear, or a family of kinds."""
    return tr("all gear") if scope == "all" else tr(_FAMILIES[scope]) if scope in _FAMILIES else scope

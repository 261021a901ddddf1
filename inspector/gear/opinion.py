"""What people say of a piece beside an inspection: a doubt that holds it, or an opinion that answers a finding."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.verdict import Value


class Stance(StrEnum):
    """Which way an opinion turns a verdict."""

    DOUBTS = "doubts"  # anybody may: it holds the piece until a competent person has inspected it
    ANSWERS = "answers"  # a second competent person may: it answers slight faults it names until anything new is known


class Answered(Struct, frozen=True):
    """A finding as it stood when it was answered: the rule, and the value it had found."""

    rule: str
    value: Value


class NewOpinion(Struct, frozen=True):
    """An opinion before it is kept. by: a person's id. rests_on: the digest of the facts that were known that day."""

    on: date
    by: str
    stance: Stance
    why: str
    answers: tuple[Answered, ...] = ()
    rests_on: str = ""


class Opinion(Struct, frozen=True):
    """A kept opinion."""

    id: str
    item_id: str
    facts: NewOpinion

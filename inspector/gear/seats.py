"""Who may do what on a database server: every login has a seat, in one branch and with one role."""

from dataclasses import dataclass
from enum import StrEnum


class Role(StrEnum):
    """What a login may do. The server holds it, whatever the program asks for."""

    OFFICER = "officer"  # all that an equipment officer does
    MEMBER = "member"  # reads, and adds checks before use, which only make a verdict stricter
    READER = "reader"  # reads


@dataclass(frozen=True, slots=True)
class Seat:
    """A login with its branch and role."""

    login: str
    branch: str
    role: Role

"""Who may do what on a database server: every login has a seat, in one branch and with one role."""

from enum import StrEnum

from msgspec import Struct


class Role(StrEnum):
    """What a login may do. The server holds it, whatever the program asks for."""

    OFFICER = "officer"  # all that an equipment officer does
    MEMBER = "member"  # reads, and adds checks before use, which only make a verdict stricter
    READER = "reader"  # reads


class Seat(Struct, frozen=True):
    """A login with its branch and role."""

    login: str
    branch: str
    role: Role

"""The inks of all drawings, by what they mean."""

from enum import StrEnum


class Ink(StrEnum):
    """What a line or a face means; paper and window give it a colour."""

    INK = "ink"
    FAINT = "faint"
    HAIR = "hair"
    STEEL = "steel"
    THIN = "thin"  # where steel was and is no more
    LIMIT = "limit"
    BAND = "band"
    FORCE = "force"
    PAPER = "paper"
    MARK = "mark"

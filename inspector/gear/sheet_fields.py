"""The names of a sheet's fields. Pieces and checks count from 1 in the order of the paper; tags may hold any sign."""


def tick_name(piece: int, check: int, answer: str) -> str:
    """The field of a box, e.g. "002-05-fault"; the answers are good and fault."""
    return f"{piece:03d}-{check:02d}-{answer}"


def reading_name(piece: int, check: int) -> str:
    """The field that a measured figure is written into."""
    return f"{piece:03d}-{check:02d}-reading"


def unit_name(piece: int, check: int) -> str:
    """The field that the unit of a measured figure is chosen in."""
    return f"{piece:03d}-{check:02d}-unit"


def remarks_name(piece: int) -> str:
    """The field for what is remarked on a piece."""
    return f"{piece:03d}-remarks"


def signed_name(line: int, what: str) -> str:
    """A field of the lines at the end, e.g. "by-1-name"; what: name, signature or when."""
    return f"by-{line}-{what}"


SHEET_NAME = "sheet"  # of the hidden field by which a filled form is known

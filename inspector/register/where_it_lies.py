"""Where a register lies: what its file is called, and what names a database on a server. Asked at every start."""

REGISTER_FILE = "register.db"  # what the file is called in its folder


def is_address(place: object) -> bool:
    """Whether this names a database on a server and no folder."""
    return isinstance(place, str) and "://" in place

"""Registers of the tests wait for no disk, as the run's server does not: none of them has to outlive a power cut.

What is written stays in memory until the system takes it to the disk; a process that is killed loses nothing by it. The
program itself waits: tests/register/test_history_is_kept.py opens a register by its own settings, and what the tests
start as a process of its own has them too.
"""

from inspector.register import guards

PACKAGED = guards._PRAGMAS  # what the program sets
_WAITS, _HURRIES = "synchronous=FULL", "synchronous=OFF"


def hurry() -> None:
    """From now on no register that this process opens waits. Raises ValueError where the program waits no more."""
    if _WAITS not in PACKAGED:
        raise ValueError(f"the program does not set {_WAITS}")
    vars(guards)["_PRAGMAS"] = tuple(_HURRIES if one == _WAITS else one for one in PACKAGED)

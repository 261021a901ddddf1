"""What the tests do not wait for: the disk, and hashes that are dear on purpose.

Registers of the tests wait for no disk, as the run's server does not: none of them has to outlive a power cut. What is
written stays in memory until the system takes it to the disk; a process that is killed loses nothing by it. And the
hash of a passphrase has to be dear to a guesser, who is not among the tests.

The program itself waits for both: in tests/register, test_history_is_kept.py opens a register and test_passphrases.py
hashes by the program's own settings, and what the tests start as a process of its own has them too.
"""

from functools import cache
from typing import TYPE_CHECKING

from inspector.register import guards, passphrases

if TYPE_CHECKING:
    from argon2 import PasswordHasher

PACKAGED = guards._PRAGMAS  # what the program sets
PACKAGED_HASHER = passphrases._hasher
_WAITS, _HURRIES = "synchronous=FULL", "synchronous=OFF"


def hurry() -> None:
    """From now on neither is waited for in this process. Raises ValueError where the program waits no more."""
    if _WAITS not in PACKAGED:
        raise ValueError(f"the program does not set {_WAITS}")
    vars(guards)["_PRAGMAS"] = tuple(_HURRIES if one == _WAITS else one for one in PACKAGED)
    vars(passphrases)["_hasher"] = _quick_hasher


@cache
def _quick_hasher() -> "PasswordHasher":
    from argon2 import PasswordHasher

    return PasswordHasher(time_cost=1, memory_cost=8, parallelism=1)

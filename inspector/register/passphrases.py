"""Passphrases are kept as Argon2id hashes; nothing here can tell one again.

argon2 is imported where one is hashed: a register is opened far more often than a passphrase is typed.
"""

import unicodedata
from functools import cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from argon2 import PasswordHasher


@cache
def _hasher() -> "PasswordHasher":
    from argon2 import PasswordHasher

    return PasswordHasher()  # RFC 9106's second choice: 64 MiB, three passes


def hashed(passphrase: str) -> str:
    """The hash to keep, with its own salt."""
    return _hasher().hash(one_spelling(passphrase))


def matches(kept: str, passphrase: str) -> bool:
    """Whether this is the passphrase that was kept."""
    from argon2.exceptions import InvalidHashError, VerificationError

    try:
        return _hasher().verify(kept, one_spelling(passphrase))
    except (VerificationError, InvalidHashError):
        return False


def one_spelling(passphrase: str) -> str:
    """One spelling of what keyboards write in several: an accent as its own sign or as part of the letter."""
    return unicodedata.normalize("NFKC", passphrase)

"""Passphrases are kept as Argon2id hashes; nothing here can tell one again."""

import unicodedata

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

_HASHER = PasswordHasher()  # RFC 9106's second choice: 64 MiB, three passes


def hashed(passphrase: str) -> str:
    """The hash to keep, with its own salt."""
    return _HASHER.hash(one_spelling(passphrase))


def matches(kept: str, passphrase: str) -> bool:
    """Whether this is the passphrase that was kept."""
    try:
        return _HASHER.verify(kept, one_spelling(passphrase))
    except (VerificationError, InvalidHashError):
        return False


def one_spelling(passphrase: str) -> str:
    """One spelling of what keyboards write in several: an accent as its own sign or as part of the letter."""
    return unicodedata.normalize("NFKC", passphrase)

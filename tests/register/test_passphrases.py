"""A passphrase is kept as an Argon2id hash that fits its column and costs a guesser memory."""

import re

import pytest

from inspector.register import passphrases
from inspector.register.passphrases import hashed, matches
from inspector.register.year_tables import passphrase
from tests import hurry

WORDS = "low water at the café"


@pytest.fixture(autouse=True)
def _as_dear_as_the_program_s(monkeypatch: pytest.MonkeyPatch) -> None:
    """Other tests hash in a hurry."""
    monkeypatch.setattr(passphrases, "_hasher", hurry.PACKAGED_HASHER)


def test_a_hash_is_salted_argon2id_and_fits_its_column() -> None:
    one, other = hashed(WORDS), hashed(WORDS)
    assert one != other and WORDS not in one
    found = re.match(r"\$argon2id\$v=19\$m=(\d+),t=(\d+),p=(\d+)\$", one)
    assert found is not None
    memory_kib, passes, _ = map(int, found.groups())
    assert memory_kib >= 64 * 1024 and passes >= 3  # RFC 9106, section 4, the second recommended option
    assert len(one) <= (passphrase.c.hashed.type.length or 0)  # type: ignore[attr-defined]


def test_only_the_same_words_match_however_the_keyboard_writes_an_accent() -> None:
    kept = hashed(WORDS)
    assert matches(kept, WORDS) and matches(kept, "low water at the cafe\N{COMBINING ACUTE ACCENT}")
    assert not matches(kept, WORDS + " ") and not matches(kept, "low water at the cafe")


@pytest.mark.parametrize("kept", ["", "not a hash", "$argon2id$v=19$m=65536"])
def test_what_is_no_hash_matches_nothing(kept: str) -> None:
    assert not matches(kept, WORDS)

"""A flipped byte is found, or everything reads as before. `python -m tests.faults.run flips` tries many more."""

from pathlib import Path

from tests.faults import flips


def test_a_flipped_byte_is_found_or_changes_nothing(small: Path) -> None:
    made = flips.run(small, 40, seed=9)
    counts = flips.counted(made)
    assert counts[flips.SLIPPED] == 0, [one for one in made if one.outcome == flips.SLIPPED]
    assert sum(counts.values()) == 40 and counts[flips.PROVED] >= 5


def test_a_flip_that_nothing_finds_would_be_counted_as_slipped(small: Path) -> None:
    """The check itself: held against another export, a flip in a page's unused room counts as slipped."""
    good, expected = small.read_bytes(), flips.export(small)
    same = (
        one for one in flips.flips(good, small, 40, 9) if flips.tried(good, small, one, expected).outcome == flips.SAME
    )
    assert flips.tried(good, small, next(same), "another").outcome == flips.SLIPPED

"""A test that goes through many cases tries them all and names each that fails."""

import inspect
from collections.abc import Callable

import pytest

from tests.each import case_count, each


def _told(test: Callable[..., None], **fixtures: object) -> list[str]:
    """What the failure says of each case."""
    with pytest.raises(pytest.fail.Exception) as failed:
        test(**fixtures)
    said = str(failed.value).replace("\n    ", " ").splitlines()
    assert said[0].startswith(f"{len(said) - 1} of ")
    return said[1:]


def test_every_case_is_tried_and_each_that_fails_is_named() -> None:
    tried = []

    @each("number", [1, 2, 3, 4], ids=lambda number: f"no. {number}")
    def odd(number: int) -> None:
        tried.append(number)
        if number == 4:
            raise KeyError("four")
        assert number % 2, "even"

    told = _told(odd)
    assert tried == [1, 2, 3, 4]
    assert [one.partition(": line")[0] for one in told] == ["no. 2", "no. 4"]
    assert "AssertionError: even" in told[0] and "KeyError: 'four'" in told[1]


def test_what_should_be_refused_and_is_not_is_a_fault_and_so_is_another_error() -> None:
    @each("text", ["x", "7", ""])
    def refused(text: str) -> None:
        with pytest.raises(ValueError, match="'x'"):
            int(text)

    told = "\n".join(_told(refused))
    assert "'x': " not in told
    assert told.startswith("'7': ") and "DID NOT RAISE" in told
    assert "\n'': " in told and "did not match" in told


def test_a_case_that_is_skipped_hides_no_other() -> None:
    @each("number", [1, 2])
    def skips(number: int) -> None:
        pytest.skip("not here")

    assert len(_told(skips)) == 2


def test_one_laid_on_another_makes_pairs_and_a_fixture_is_handed_through() -> None:
    seen = []

    @each("one", "ab")
    @each("other, third", [(1, 2), (3, 4)])
    def pairs(one: str, other: int, third: int, fixture: str) -> None:
        seen.append((one, other, third, fixture))
        assert (one, other) != ("b", 3)

    told = _told(pairs, fixture="f")
    assert seen == [("a", 1, 2, "f"), ("a", 3, 4, "f"), ("b", 1, 2, "f"), ("b", 3, 4, "f")]
    assert len(told) == 1 and told[0].startswith("'b': ") and " 1 of 2 cases: 3-4: " in told[0]
    assert list(inspect.signature(pairs).parameters) == ["fixture"]
    assert case_count(pairs) == 4 and case_count(_told) == 1


def test_no_case_a_short_one_and_an_unknown_argument_are_refused() -> None:
    for names, cases in (("one", []), ("one, other", [(1,)])):
        with pytest.raises(ValueError, match="no case"):
            each(names, cases)
    with pytest.raises(ValueError, match="3 names for 2 cases"):
        each("one", [1, 2], ids=["a", "b", "c"])
    with pytest.raises(ValueError, match="takes no other"):
        each("other", [1])(lambda one: None)

"""What is typed and not saved survives a closed window; a broken draft never stands in anybody's way."""

import os
from collections.abc import Mapping
from pathlib import Path
from unittest import mock

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inspector.duties.keep_draft import MOST_BYTES, Draft, drafts, forget, keep, kept
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.refused import Refused

_PLAIN = st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text()
_VALUES = st.dictionaries(
    st.text(),
    st.recursive(_PLAIN, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(), inner, max_size=4)),
    max_size=6,
)
_ONE_OFFICE = settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60, deadline=None)


def file_of(office: Office) -> Path:
    """The one draft's file."""
    (found,) = (office.out_tray.parent / "drafts").glob("*.json")
    return found


def read_back(office: Office, key: str) -> Draft:
    """The draft that must be there."""
    draft = kept(office, key)
    assert draft is not None
    return draft


@_ONE_OFFICE
@given(key=st.text(min_size=1, max_size=80), values=_VALUES)
def test_what_is_kept_is_what_comes_back(office: Office, key: str, values: Mapping[str, object]) -> None:
    keep(office, key, values)
    assert read_back(office, key).values == values
    assert key in {one.key for one in drafts(office)}
    forget(office, key)
    assert kept(office, key) is None and drafts(office) == ()


@_ONE_OFFICE
@given(rubbish=st.binary(max_size=300))
def test_a_broken_draft_is_as_if_there_were_none_and_is_written_anew(office: Office, rubbish: bytes) -> None:
    keep(office, "inspect SH-1", {"note": "first"})
    file_of(office).write_bytes(rubbish)
    assert kept(office, "inspect SH-1") is None and drafts(office) == ()
    keep(office, "inspect SH-1", {"note": "again"})
    assert read_back(office, "inspect SH-1").values == {"note": "again"}
    forget(office, "inspect SH-1")


@pytest.mark.parametrize("text", ["[]", "1", '{"form": "draft 1"}', '{"form": "draft 1", "values": 3}', "[" * 90_000])
def test_what_is_json_and_no_draft_is_none_either(office: Office, text: str) -> None:
    keep(office, "inspect SH-1", {})
    file_of(office).write_text(text)
    assert kept(office, "inspect SH-1") is None


def test_tags_that_read_alike_as_file_names_have_drafts_of_their_own(office: Office) -> None:
    for key in ("inspect SH/1", "inspect SH-1", "inspect sh-1", "inspect ../SH-1"):
        keep(office, key, {"key": key})
    assert {one.key: one.values["key"] for one in drafts(office)} == {
        key: key for key in ("inspect SH/1", "inspect SH-1", "inspect sh-1", "inspect ../SH-1")
    }
    assert {one.parent for one in office.out_tray.parent.rglob("*.json")} == {office.out_tray.parent / "drafts"}


def test_the_day_it_was_begun_stays_and_the_last_day_moves(office: Office) -> None:
    keep(office, "inspect SH-1", {"note": "a"})
    later = office.at(office.now.replace(hour=22))
    keep(later, "inspect SH-1", {"note": "ab"})
    draft = read_back(later, "inspect SH-1")
    assert (draft.begun, draft.kept, draft.by) == (office.now, later.now, office.officer.id)


def test_a_draft_is_never_in_the_ledger(office: Office) -> None:
    before = verify_book(office).head
    keep(office, "inspect SH-1", {"note": "a"})
    forget(office, "inspect SH-1")
    assert verify_book(office).head == before


def test_what_is_too_long_is_refused_and_the_last_draft_stays(office: Office) -> None:
    keep(office, "inspect SH-1", {"note": "short"})
    with pytest.raises(Refused, match="longer than a draft"):
        keep(office, "inspect SH-1", {"note": "x" * MOST_BYTES})
    with pytest.raises(Refused, match="A number"):
        keep(office, "inspect SH-1", {"note": float("nan")})
    assert read_back(office, "inspect SH-1").values == {"note": "short"}


def test_a_disk_that_fails_midway_leaves_the_last_draft_whole_and_no_scrap(office: Office) -> None:
    keep(office, "inspect SH-1", {"note": "whole"})
    with (
        mock.patch.object(os, "fsync", side_effect=OSError(28, "No space left")),
        pytest.raises(Refused, match="space"),
    ):
        keep(office, "inspect SH-1", {"note": "half"})
    assert read_back(office, "inspect SH-1").values == {"note": "whole"}
    assert len(list((office.out_tray.parent / "drafts").iterdir())) == 1
    forget(office, "never kept")

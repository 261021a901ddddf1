"""The evidence list: everything that is known stands on it, with lines to sign, on both papers."""

import pytest
from msgspec.structs import replace

from inspector.gear.evidence_list import EvidenceList, EvidencePiece
from inspector.gear.incident import Distance
from inspector.gear.outcome import Outcome
from inspector.gear.rig_result import RigResult
from inspector.gear.verdict import Fact
from inspector.paper.evidence_list import evidence_list
from inspector.paper.page_style import PageSize
from inspector.register.rows import from_body, to_body
from inspector.units import Dimension, System, read
from tests.drawings import rigs
from tests.paper.conftest import imprint
from tests.paper.reading import all_text, assert_no_text_on_text, assert_within_margins, page_texts, squeezed

HEAD = "9f2c41d07ab3" * 5


def piece(tag: str, outcome: Outcome = Outcome.FIT, *, is_kept: bool = True) -> EvidencePiece:
    """A shackle as it stood."""
    state = "kept as found" if is_kept else "released on 3 Dec 2026 by Ada Officer and Bo Second: nothing more to learn"
    said = f"{tag} said this on the day"
    return EvidencePiece(
        tag, "Bow shackle", "WLL 4.75 t", "QVO", "QV 1-7", outcome, said, "Di Member", "in store: Shed", state, is_kept
    )


def listed(result: RigResult | None = None, count: int = 6) -> EvidenceList:
    """A list of an invented accident."""
    kinds = tuple(Outcome)
    pieces = tuple(piece(f"SH-{n:02d}", kinds[n % 4], is_kept=n % 3 != 0) for n in range(count))
    ends = Distance("hook of V-1", "nearest person", read("14.2 m", Dimension.LENGTH, field="d"))
    return EvidenceList(
        imprint=imprint("Evidence list", "E-2026-0001"),
        ref="I-ABCD-0001",
        gravity="Accident",
        what="The strap flew.\nNobody was hurt.",
        facts=(Fact("Place", "Long Spit, north end"), Fact("Witnesses", "Ned Watcher"), Fact("Day", "20 June 2026")),
        pieces=pieces,
        vehicles=(("V-1", "Grey wagon", "kept as found"),),
        distances=(ends,),
        result=result,
        why_no_result="" if result else "nobody wrote down how it was rigged",
        rig_vehicles=rigs.VEHICLES,
        told=(("21 June 2026", "Statement of Ned Watcher", "I saw the pin turn."),),
        files=(("pin.jpg", "ab" * 32),),
        may_not=("Do not clean it.", "Two competent persons release each piece."),
        head=HEAD,
    )


@pytest.mark.parametrize("page", PageSize)
@pytest.mark.parametrize("make", [*rigs.RIGS.values(), lambda: None], ids=[*rigs.RIGS, "no sum"])
def test_nothing_lies_on_another_and_all_is_said(make: object, page: PageSize) -> None:
    result = make() if callable(make) else None
    system = System.METRIC if page is PageSize.A4 else System.IMPERIAL
    found = listed(result)
    printed = evidence_list(found, page, system)
    assert printed.missing_glyphs == ()
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    text = squeezed(all_text(printed))
    assert [words for words in words_of(found) if squeezed(words) not in text] == []


def words_of(found: EvidenceList) -> list[str]:
    """All that must stand on it."""
    said = [found.ref, "The strap flew.", "Nobody was hurt.", found.head, *found.may_not, *found.imprint.cautions]
    said += [one.text for one in found.facts] + [text for row in (*found.vehicles, *found.told) for text in row]
    said += [text for row in found.files for text in row] + ["14.2 m", "hook of V-1", "nearest person"]
    for one in found.pieces:
        said += [one.tag, one.headline, one.state, one.serial, one.now, one.held_by]
    if found.result is None:
        return [*said, found.why_no_result]
    load = found.result.load
    return [*said, found.result.headline, *load.steps, *(one.what for one in load.assumptions), *found.result.cautions]


def test_only_what_is_kept_has_a_seal_and_a_line_to_sign() -> None:
    found = listed()
    kept = [one.tag for one in found.pieces if one.is_kept]
    text = all_text(evidence_list(found, PageSize.A4))
    assert text.count("Seal no.") == len(kept)
    signed = text.split("Hand-overs")[1]
    assert [one.tag for one in found.pieces if one.tag in signed] == kept
    nothing = replace(found, pieces=tuple(replace(one, is_kept=False) for one in found.pieces))
    assert "Hand-overs" not in all_text(evidence_list(nothing, PageSize.A4))


def test_many_pieces_go_on_over_the_pages_each_with_number_and_caution() -> None:
    pages = page_texts(evidence_list(listed(count=40), PageSize.LETTER))
    assert len(pages) > 3
    assert all("E-2026-0001" in text and "A decision aid." in text for text in pages)


@pytest.mark.parametrize("page", PageSize)
@pytest.mark.parametrize("count", [3, 13, 30, 60])
def test_lines_to_sign_stand_under_the_names_of_their_columns_on_every_page(count: int, page: PageSize) -> None:
    printed = evidence_list(listed(count=count), page)
    signed = [text for text in page_texts(printed) if "Taken over: name, signature" in text]
    tags = [one.tag for one in listed(count=count).pieces if one.is_kept]
    assert all(any(tag in text.partition("Piece, seal no.")[2] for text in signed) for tag in tags)


def test_it_is_kept_and_read_back_the_same() -> None:
    found = listed(next(iter(rigs.RIGS.values()))())
    again = from_body(to_body(found), EvidenceList)
    assert evidence_list(again, PageSize.A4).pdf == evidence_list(found, PageSize.A4).pdf

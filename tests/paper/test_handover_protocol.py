"""The handover protocol: everything that passes on or is open, and both signatures on one page."""

import pytest
from msgspec.structs import replace

from inspector.gear.papers import HandoverProtocol, ProtocolTable
from inspector.gear.verdict import Fact
from inspector.paper.handover_protocol import handover_protocol
from inspector.paper.page_style import PageSize
from tests.paper.conftest import imprint
from tests.paper.reading import (
    all_text,
    assert_no_text_on_text,
    assert_within_margins,
    page_texts,
    squeezed,
)

SHA = "4ecfd1a88cb55ad4d09582840be7c7abde5328605acbce3705c864b6cdd44052"


def table(title: str, lines: int) -> ProtocolTable:
    said = tuple((f"SH-{n:03}", "Bow shackle", f"{title} {n}", "an inspection of all of it") for n in range(lines))
    columns = ("Tag", "Piece", "What holds it", "What would release it")
    return ProtocolTable(title, "What is said.", columns, (0.16, 0.24, 0.3, 0.3), said, f"No {title}.")


@pytest.fixture
def protocol() -> HandoverProtocol:
    """Two long lists and an empty one."""
    handed = (Fact("Copy of the register", "register-2026-06-13-9f2c41d07ab3.db"), Fact("Checksum", SHA))
    mind = ("Signing key: none.", "Keep the copy on another disk.")
    tables = (table("Holds", 30), table("Missing", 0), table("Loans", 12))
    return HandoverProtocol(
        imprint("Handover protocol", "H-ABCD-0001"), "Ada Officer", "Ben Next", handed, mind, tables
    )


@pytest.mark.parametrize("page", PageSize)
def test_it_tells_from_whom_to_whom_and_every_line_of_every_list(protocol: HandoverProtocol, page: PageSize) -> None:
    printed = handover_protocol(protocol, page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    text = all_text(printed)
    assert "Handed over by" in text and "Ada Officer" in text and "Ben Next" in text
    for one in protocol.tables:
        for line in one.lines:
            assert " ".join(line) in text
    assert "No Missing." in text and "No Holds." not in text
    for said in (*protocol.mind, *protocol.imprint.cautions):
        assert said in text
    assert SHA in squeezed(text)


@pytest.mark.parametrize("lines", range(0, 40, 3))
def test_both_sign_on_one_page(protocol: HandoverProtocol, lines: int) -> None:
    printed = handover_protocol(replace(protocol, tables=(table("Holds", lines),)), PageSize.A4)
    signed = [text for text in page_texts(printed) if "Signed by both" in text]
    assert len(signed) == 1
    assert "Handed over: Ada Officer" in signed[0] and "Taken over: Ben Next" in signed[0]
    assert signed[0].count("Signature") == 2 and signed[0].count("Place and date") == 2


def test_every_page_tells_whose_it_is_and_to_mind(protocol: HandoverProtocol) -> None:
    printed = handover_protocol(protocol, PageSize.LETTER)
    assert printed.page_count >= 2
    for text in page_texts(printed):
        assert "H-ABCD-0001" in text and "Sandbar Touring Club" in text and "Stay clear of a loaded line." in text
        assert "ledger head 9f2c41d07ab3" in text

"""Boxes that look alike share their looks; ticked and empty, large and small ones never do."""

from io import BytesIO
from typing import Any

from pypdf import PdfReader

from inspector.paper.form import tick_box
from inspector.paper.page_style import PageSize
from inspector.paper.press import Press


def looks_of(*sides_pt: float) -> list[dict[str, tuple[int, bytes]]]:
    """Of each box by state: the number of its look in the file, and how it is drawn."""
    press = Press(PageSize.A4)
    for number, side_pt in enumerate(sides_pt):
        tick_box(press, 50, 50 + 40 * number, side_pt, f"box{number}", "a box")
    press.next_page()
    boxes: Any = PdfReader(BytesIO(press.finished())).pages[0]["/Annots"]
    return [
        {
            f"{way}{state}": (looks.raw_get(state).idnum, looks[state].get_data())
            for way, looks in box.get_object()["/AP"].items()
            for state in looks
        }
        for box in boxes
    ]


def test_boxes_of_one_size_share_their_looks_and_no_two_states_do() -> None:
    one, same, larger = looks_of(12, 12, 20)
    assert one == same and len(one) == 6
    assert all(one[f"/{way}/Yes"][1] != one[f"/{way}/Off"][1] for way in "NDR")
    assert not {number for number, _ in one.values()} & {number for number, _ in larger.values()}


def test_another_document_has_looks_of_its_own() -> None:
    assert looks_of(12) == looks_of(12)

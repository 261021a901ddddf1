"""The handout: one sheet on both papers, whatever the dials, and every word of the answer on it."""

from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from inspector.gear.bench import Worked
from inspector.gear.papers import Handout
from inspector.paper.handout import handout
from inspector.paper.page_style import PageSize
from inspector.register.rows import from_body, to_body
from inspector.units import System
from tests.paper.conftest import imprint
from tests.paper.reading import all_text, assert_no_text_on_text, assert_within_margins, squeezed
from tests.rulebook.test_bench import KEYS, TOPICS, places, worked, worked_in

LENT = ("Begun from HR-02.", "Not known, so the usual figure is assumed: Throat of the weld as new; Ball hole off it.")


def sheet(found: Worked) -> Handout:
    """The handout of a topic, begun from an invented piece."""
    return Handout(imprint("Why", "T-2026-0007"), found, LENT)


@KEYS
@pytest.mark.parametrize("page", PageSize)
@pytest.mark.parametrize("system", System)
def test_it_is_one_sheet_on_which_nothing_lies_on_another(key: str, page: PageSize, system: System) -> None:
    printed = handout(sheet(worked_in(system, key)), page, system)
    assert printed.page_count == 1 == len(PdfReader(BytesIO(printed.pdf)).pages)
    assert printed.missing_glyphs == ()
    assert_within_margins(printed)
    assert_no_text_on_text(printed)


@settings(deadline=None, max_examples=25)
@given(st.data())
def test_it_stays_one_sheet_wherever_the_dials_stand(data: st.DataObject) -> None:
    key = data.draw(st.sampled_from(list(TOPICS)))
    system = data.draw(st.sampled_from(System))
    found = worked_in(system, key, data.draw(places(key)))
    assert handout(sheet(found), PageSize.LETTER, system).page_count == 1


@KEYS
def test_every_word_of_the_answer_is_printed(key: str) -> None:
    found = worked(key)
    text = squeezed(all_text(handout(sheet(found), PageSize.A4)))
    said = [found.question, found.means, *found.cautions, *found.left_out, *found.sources, *LENT]
    said += [word for one in found.figures for word in (one.label, one.text, one.came, one.source)]
    said += [word for one in found.lines for word in (one.says, one.formula, one.filled, one.result)]
    assert [words for words in said if squeezed(words) not in text] == []


@KEYS
def test_what_is_kept_comes_back_as_it_was(key: str) -> None:
    made = sheet(worked(key))
    assert from_body(to_body(made), Handout) == made

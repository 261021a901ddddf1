"""The pictures of the bench: inside their frame wherever the dials stand, and they change as a dial turns."""

from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.drawings.bench_picture import bench_picture
from inspector.drawings.shapes import Drawing
from inspector.units import System
from tests.drawings.walls import assert_inside, assert_texts_apart, said
from tests.each import each
from tests.rulebook.test_bench import KEYS, TOPICS, places, worked, worked_in


@st.composite
def drawn(draw: st.DrawFn) -> Drawing:
    """Any topic, any place of its dials, both systems."""
    key = draw(st.sampled_from(list(TOPICS)))
    system = draw(st.sampled_from(System))
    return bench_picture(worked_in(system, key, draw(places(key))), system)


@settings(deadline=None, max_examples=300)
@given(drawn())
def test_it_lies_in_its_frame_and_no_word_lies_on_another(drawing: Drawing) -> None:
    assert_inside(drawing)
    assert_texts_apart(drawing)


@KEYS
def test_who_cannot_see_it_is_told_what_it_means(key: str) -> None:
    found = worked(key)
    drawing = bench_picture(found)
    assert drawing.describes == found.means and drawing.title == found.title


@KEYS
def test_every_dial_changes_the_picture(key: str) -> None:
    for dial in TOPICS[key].dials:
        lower = dial.stops[1] if dial.stops else dial.usual.si * 0.95 if dial.usual.si else 0.0005
        assert bench_picture(worked(key, **{dial.key: lower})).shapes != bench_picture(worked(key)).shapes, dial.key


@each(
    ("key", "words"),
    [
        ("pin", "17.9 kN"),
        ("ball", "60 mm"),
        ("weld", "41.2 kN"),
        ("wall", "limit"),
        ("strap", "2.55"),
        ("speed", "34.4 kN"),
    ],
)
def test_it_says_the_figures_of_the_sum(key: str, words: str) -> None:
    assert words in said(bench_picture(worked(key)))

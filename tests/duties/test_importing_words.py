"""Two spellings of one word are told to be one, in whatever alphabet they stand."""

from hypothesis import example, given
from hypothesis import strategies as st

from inspector.duties.importing.words import plain
from tests.each import each


@each(
    ("one", "other"),
    [
        ("Bow shackle", "  bow_SHACKLE. "),
        ("Q-7", "q 7"),
        ("Büchse", "Bu\u0308chse"),
        ("Straße", "STRASSE"),
        ("⌀ 19", "Ø/19"),
        ("3+1", "3+1:"),
    ],
)
def test_capitals_signs_and_spaces_make_no_other_word(one: str, other: str) -> None:
    assert plain(one) == plain(other)


@given(st.text(st.characters(max_codepoint=127)))
@example("a_b-c+d\x1c\x7f E")
def test_a_text_of_the_plain_alphabet_is_spelled_as_within_any_other(text: str) -> None:
    assert plain(f"{text} é") == f"{plain(text)} é".strip()

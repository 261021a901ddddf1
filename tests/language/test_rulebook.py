"""The rulebook's texts are looked up as it is read; what it is called by stays the same in every language."""

from inspector.rulebook.load import packaged
from tests.language.pseudo import Pseudo, marked

_ENGLISH = packaged()


def test_the_rulebook_is_the_same_book_in_another_language(pseudo: Pseudo) -> None:
    book = packaged()

    assert book.hash == _ENGLISH.hash
    assert [one.says for one in book.rules] == [marked(one.says) for one in _ENGLISH.rules]
    assert [one.limit for one in book.rules] == [one.limit for one in _ENGLISH.rules]
    assert {key: kind.measures[0].points for key, kind in book.kinds.items() if kind.measures} == {
        key: kind.measures[0].points for key, kind in _ENGLISH.kinds.items() if kind.measures
    }

"""Words are looked up in one catalogue, and stand in English without one."""

from collections.abc import Iterator
from datetime import date
from gettext import NullTranslations

import pytest

from inspector.language import (
    each_once_a_language,
    once_a_language,
    read_shown_day,
    show_day,
    spoken,
    tr,
    tr_n,
    use_catalogue,
    within,
)
from inspector.units import Dimension, read


class Dutch(NullTranslations):
    """A catalogue of three texts."""

    def gettext(self, message: str) -> str:
        return {"Fit": "Goed", "until {day}": "tot {day}"}.get(message, message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return "{count} stuk" if n == 1 else "{count} stuks"


@pytest.fixture
def dutch() -> Iterator[None]:
    use_catalogue(Dutch())
    yield
    use_catalogue(NullTranslations())


def test_a_text_without_a_catalogue_stands_as_it_is() -> None:
    assert tr("until {day}", day="3 May") == "until 3 May"
    assert tr("a {brace} that nobody fills") == "a {brace} that nobody fills"
    assert [tr_n("{count} piece", "{count} pieces", count) for count in (1, 2)] == ["1 piece", "2 pieces"]


@pytest.mark.usefixtures("dutch")
def test_a_catalogue_is_used_everywhere() -> None:
    assert tr("Fit") == "Goed"
    assert tr("until {day}", day="3 May") == "tot 3 May"
    assert tr_n("{count} piece", "{count} pieces", 3) == "3 stuks"


def test_a_day_cannot_be_read_two_ways() -> None:
    assert show_day(date(2026, 2, 3)) == "3 Feb 2026"


def test_texts_made_once_a_language_follow_the_catalogue_and_are_not_made_again() -> None:
    made: list[str] = []

    @once_a_language
    def words() -> dict[str, str]:
        made.append("made")
        return {"fit": tr("Fit")}

    assert words()["fit"] == "Fit" and words() is words() and len(made) == 1
    use_catalogue(Dutch())
    try:
        assert words()["fit"] == "Goed" and len(made) == 2
    finally:
        use_catalogue(NullTranslations())
    assert words()["fit"] == "Fit"


def test_what_is_asked_in_few_ways_is_made_once_each_and_follows_the_catalogue() -> None:
    made: list[str] = []

    @each_once_a_language
    def until(day: str) -> str:
        made.append(day)
        return tr("until {day}", day=day)

    assert [until(day) for day in ("3 May", "4 May", "3 May")] == ["until 3 May", "until 4 May", "until 3 May"]
    assert made == ["3 May", "4 May"]
    use_catalogue(Dutch())
    try:
        assert until("3 May") == "tot 3 May" and made == ["3 May", "4 May", "3 May"]
    finally:
        use_catalogue(NullTranslations())
    assert until("3 May") == "until 3 May"


class German(NullTranslations):
    """A catalogue in which a day has another form and its months other names."""

    def gettext(self, message: str) -> str:
        months = "Jan Feb Mär Apr Mai Jun Jul Aug Sep Okt Nov Dez"
        return {"{day} {month} {year}": "{day}. {month} {year}"}.get(message, months if " " in message else message)


def test_a_day_is_read_again_as_it_was_shown() -> None:
    assert read_shown_day("3 Feb 2026") == date(2026, 2, 3)
    assert read_shown_day("31 Feb 2026") is None and read_shown_day("soon") is None
    use_catalogue(German())
    try:
        days = [date(2026, month, 28) for month in range(1, 13)]
        assert [read_shown_day(show_day(day)) for day in days] == days
        assert show_day(days[11]) == "28. Dez 2026"
    finally:
        use_catalogue(NullTranslations())


class Capitals(NullTranslations):
    """A language whose nouns keep their capital, with words of its own for times."""

    def info(self) -> dict[str, str]:
        return {"language": "de"}

    def gettext(self, message: str) -> str:
        return {"{count} days": "{count} Tage", "{count} years": "{count} Jahre", "mm/year": "mm/Jahr"}.get(
            message, message
        )


@pytest.fixture
def capitals() -> Iterator[None]:
    use_catalogue(Capitals())
    yield
    use_catalogue(NullTranslations())


def test_a_name_within_a_sentence_begins_small_in_english() -> None:
    assert spoken() == "en"
    assert within("Bow shackle") == "bow shackle"


@pytest.mark.usefixtures("capitals")
def test_a_name_keeps_its_capital_where_the_language_wants_it() -> None:
    assert spoken() == "de"
    assert within("Bogenschäkel") == "Bogenschäkel"


@pytest.mark.usefixtures("capitals")
@pytest.mark.parametrize(
    ("typed", "english", "dimension"),
    [
        ("90 Tage", "90 days", Dimension.DAYS),
        ("90 tage", "90 days", Dimension.DAYS),
        ("4.5 Jahre", "4.5 years", Dimension.YEARS),
        ("0.15 mm/Jahr", "0.15 mm/year", Dimension.RATE),
    ],
)
def test_times_are_read_in_both_languages(typed: str, english: str, dimension: Dimension) -> None:
    assert read(typed, dimension, field="x").si == read(english, dimension, field="x").si

"""The look-up of translated words.

`tr` is used wherever a person will read the text. The catalogue is loaded once by app; without one the English
of the source stands. Placeholders are named, so a translator may move them.
"""

import re
from collections.abc import Callable, Hashable
from datetime import date
from functools import cache, wraps
from gettext import NullTranslations
from typing import TypeVar

Asked = TypeVar("Asked", bound=Hashable)
Made = TypeVar("Made")

_catalogue: NullTranslations = NullTranslations()
_KEEP_CAPITALS = frozenset({"de"})


def use_catalogue(catalogue: NullTranslations) -> None:
    """Take another catalogue for all texts from now on."""
    global _catalogue  # noqa: PLW0603 - one process speaks one language
    _catalogue = catalogue


def tr(text: str, /, **values: object) -> str:
    """The text in the officer's language with its placeholders filled."""
    found = _catalogue.gettext(text) if text else text
    return found.format_map(values) if values else found


def sayer() -> Callable[[str], str]:
    """`tr` without values, for good in the language that is spoken now: for what is read later."""
    catalogue = _catalogue
    return lambda text: catalogue.gettext(text) if text else text


def spoken() -> str:
    """The language that is spoken now, e.g. "de"; "en" for the texts of the source."""
    return _catalogue.info().get("language", "en")


def within(name: str) -> str:
    """A name as it stands within a sentence: it begins small, but where nouns keep their capital."""
    return name if spoken() in _KEEP_CAPITALS else name[:1].lower() + name[1:]


def later(text: str) -> str:
    """Marks a text of a table that is looked up where it is used, so that a list of all texts has it too."""
    return text


def once_a_language(make: Callable[[], Made]) -> Callable[[], Made]:
    """A function of texts that makes them once for each catalogue, not at every look."""

    by_catalogue: dict[NullTranslations, Made] = {}

    @wraps(make)
    def made() -> Made:
        if _catalogue not in by_catalogue:
            by_catalogue[_catalogue] = make()
        return by_catalogue[_catalogue]

    return made


def each_once_a_language(make: Callable[[Asked], Made]) -> Callable[[Asked], Made]:
    """The same for a function of one thing that is asked in few ways, such as a day: each way once a catalogue."""

    @cache
    def made_for(_: NullTranslations, asked: Asked) -> Made:
        return make(asked)

    @wraps(make)
    def made(asked: Asked) -> Made:
        return made_for(_catalogue, asked)

    return made


def tr_n(one: str, many: str, count: int, /, **values: object) -> str:
    """The form for this count; `{count}` is filled in."""
    return _catalogue.ngettext(one, many, count).format(count=count, **values)


@each_once_a_language
def show_day(day: date) -> str:
    """A day as people here write it, e.g. "25 Nov 2026": no order of numbers that two readers take two ways."""
    return tr("{day} {month} {year}", day=day.day, month=show_month(day.month), year=day.year)


def read_shown_day(text: str) -> date | None:
    """The day of a text that `show_day` makes; None for any other text."""
    form = re.escape(tr("{day} {month} {year}"))
    for key, digits in (("day", r"\d{1,2}"), ("month", r"\S+"), ("year", r"\d{4}")):
        form = form.replace(rf"\{{{key}\}}", f"(?P<{key}>{digits})")
    found = re.fullmatch(form, text.strip(), re.IGNORECASE)
    months = [show_month(number).casefold() for number in range(1, 13)]
    if not found or found["month"].casefold() not in months:
        return None
    try:
        return date(int(found["year"]), months.index(found["month"].casefold()) + 1, int(found["day"]))
    except ValueError:
        return None


def show_month(month: int) -> str:
    """The short name of a month, 1 to 12."""
    return _months()[month - 1]


@once_a_language
def _months() -> list[str]:
    return tr("Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec").split()

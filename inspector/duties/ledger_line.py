"""What a sentence of the ledger is made from: who did it, and the facts that the deed said of itself."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from typing import Any

from msgspec import Struct

from inspector.language import show_day, tr, tr_n, within
from inspector.register.rows import Shape, from_facts

_MOST_LISTED = 12


class Line(Struct, frozen=True):
    """A line to be told. names: of people, by id; kinds: names of kinds of gear, by key.

    Its methods raise KeyError, TypeError or ValueError where the facts have another shape; the teller then falls back
    to a general sentence, so no sentence needs to look for itself.
    """

    by: str
    facts: Mapping[str, Any]
    names: Mapping[str, str]
    kinds: Mapping[str, str]

    @property
    def who(self) -> str:
        """Whoever sat at the desk."""
        return self.names.get(self.by, tr("Somebody"))

    def text(self, key: str) -> str:
        """A fact that is a text."""
        found = self.facts[key]
        if not isinstance(found, str):
            raise TypeError(key)
        return found

    def texts(self, key: str) -> tuple[str, ...]:
        """A fact that is a list of texts."""
        return tuple(str(one) for one in self.many(key))

    def many(self, key: str) -> Sequence[Any]:
        """A fact that is a list."""
        found = self.facts[key]
        if not isinstance(found, list):
            raise TypeError(key)
        return found

    def shape(self, key: str, shape: type[Shape]) -> Shape:
        """A fact that is one of the shapes of gear."""
        return from_facts(self.facts[key], shape)

    def whole(self, shape: type[Shape]) -> Shape:
        """All facts together as one of the shapes of gear."""
        return from_facts(self.facts, shape)

    def name(self, person_id: str) -> str:
        """A person's name; what was written down where it is no id."""
        return self.names.get(person_id, person_id)

    @property
    def proofs(self) -> str:
        """Whose names a passphrase proved, in a sentence, where the line says it of a deed of two; else empty."""
        if "proved" not in self.facts:
            return ""
        names = listed([self.name(one) for one in self.texts("proved")])
        return tr(" Proved by passphrase: {names}.", names=names)

    def as_told_by(self, person_id: str) -> str:
        """Who said or did it, where that was somebody else than whoever sat at the desk; empty otherwise."""
        return "" if person_id in {"", self.by} else tr(" (by {name})", name=self.name(person_id))

    def kind(self, key: str) -> str:
        """The name of a kind of gear, in the middle of a sentence."""
        return within(self.kinds.get(key, key.replace("_", " ")))


Sentence = Callable[[Line], str]


def listed(texts: Sequence[str]) -> str:
    """Some tags or names in a sentence: "SH-04, KS-03 and BM-1"; of very many the first, and how many others."""
    if not texts:
        return tr("nothing")
    if len(texts) == 1:
        return texts[0]
    if len(texts) > _MOST_LISTED:
        others = tr_n("{count} other", "{count} others", len(texts) - _MOST_LISTED + 1)
        return listed((*texts[: _MOST_LISTED - 1], others))
    return tr("{most} and {last}", most=", ".join(texts[:-1]), last=texts[-1])


def on_day(day: date | None) -> str:
    """A day in words; empty where there is none."""
    return show_day(day) if day else ""


def said(why: str) -> str:
    """What was given as a reason or a note, behind a colon; empty for none."""
    return tr(": “{why}”", why=why) if why else ""

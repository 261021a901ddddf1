"""What a heading says: the field it means, and the unit and the kind of rating that stand in it."""

import re
from collections.abc import Mapping

from msgspec import Struct

from inspector.duties.importing.words import plain, table
from inspector.gear.import_list import SIZE_SIGN, Field

UNITS = (
    "t",
    "kg",
    "kN",
    "N",
    "lb",
    "lbs",
    "lbf",
    "short ton",
    "long ton",
    "tonnes",
    "mm",
    "cm",
    "m",
    "in",
    "inch",
    "ft",
)
MANY_WEIGHTS = ("ton", "tons", "to")  # each can mean a tonne, a short or a long ton
_IN_BRACKETS = re.compile(r"[(\[{]([^)\]}]*)[)\]}]")
_AT_END = re.compile(r"^(?P<name>.+?)(?:\s+in|\s*[/,:])?\s+(?P<unit>[^\s]+(?: tons?)?)\.?$", re.IGNORECASE)


class Heading(Struct, frozen=True):
    """What a heading says. field: empty where it means nothing known; unit: "ton" where it can mean several."""

    field: str
    unit: str = ""
    basis: str = ""


def heading_meant(text: str, sizes: Mapping[str, str]) -> Heading:
    """What a heading means. sizes: keys of sizes by their plain names, as the kinds call them."""
    bare, unit = _without_unit(text)
    said = plain(bare)
    basis = table("bases").get(said, "")
    if meant := table("fields").get(said):
        return Heading(meant, unit, basis)
    if (key := table("sizes").get(said) or sizes.get(said)) is not None:
        return Heading(SIZE_SIGN + key, unit)
    if found := _rating_in(said):
        return Heading(Field.RATING, unit, found)
    return Heading("", unit)


def _rating_in(said: str) -> str:
    """A heading such as "WLL vertical" or "rating MBS": its words name one kind of rating."""
    words = said.split()
    found = {meant for word, meant in table("bases").items() if " " not in word and word in words}
    return found.pop() if len(found) == 1 else ""


def _without_unit(text: str) -> tuple[str, str]:
    """The heading and the unit in it: "WLL (t)", "MBS kN", "Länge in m"."""
    if found := _IN_BRACKETS.search(text):
        if unit := unit_called(found[1]):
            return text[: found.start()] + " " + text[found.end() :], unit
        return _IN_BRACKETS.sub(" ", text), ""
    if (found := _AT_END.match(text.strip())) and (unit := unit_called(found["unit"])):
        return found["name"], unit
    return text, ""


def unit_called(text: str) -> str:
    """A unit as it is written; empty where the text is none. Of units "m" and "M" are told apart by no heading."""
    said = text.strip().rstrip(".")
    if said in UNITS:
        return said
    return {one.casefold(): one for one in (*UNITS, *MANY_WEIGHTS)}.get(said.casefold(), "")

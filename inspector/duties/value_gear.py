"""What the gear is worth, for the insurer: by owner and place, each currency by itself, what nobody knows counted."""

import re
from collections import defaultdict

from msgspec import Struct

from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import brief_words
from inspector.gear.item import Worth
from inspector.gear.whereabouts import Where
from inspector.language import tr
from inspector.refused import Refused

_MONEY = re.compile(r"^(?:(?P<before>[A-Za-z]{3})\s*)?(?P<number>\d[\d., ]*?)\s*(?P<after>[A-Za-z]{3})?$")
_MOST = 10**12


class ValueLine(Struct, frozen=True):
    """One owner's pieces at one place. totals: hundredths by currency, of those whose value is known."""

    owner: str
    place: str
    piece_count: int
    unknown_tags: tuple[str, ...]
    totals: tuple[tuple[str, int], ...]


class ValueList(Struct, frozen=True):
    """Every line, and all of them together. A total with unknown values is too low, and is to be told so."""

    lines: tuple[ValueLine, ...]
    total: ValueLine


def read_worth(text: str, decimal: str = ".") -> Worth:
    """An amount with its currency, “120 EUR” or “AUD 1,250.50”."""
    what = tr("Write an amount with its currency's three letters, for example “120.50 EUR”.")
    found = _MONEY.match(text.strip())
    currency = (found["before"] or found["after"] or "").upper() if found else ""
    if found is None or not currency or (found["before"] and found["after"]):
        raise Refused(tr("value"), tr("“{text}” is no amount with a currency.", text=text), what)
    hundredths = _hundredths(found["number"].strip(), decimal)
    if hundredths is None or hundredths > _MOST:
        raise Refused(tr("value"), tr("“{text}” cannot be read as an amount.", text=text), what)
    return Worth(hundredths, currency, text.strip())


def _hundredths(digits: str, decimal: str) -> int | None:
    """The amount in hundredths; None where the separators can be read in more than one way."""
    whole, _, part = digits.partition(decimal)
    grouping = "," if decimal == "." else "."
    groups = re.split(rf"[ {re.escape(grouping)}]", whole)
    is_grouped = len(groups) == 1 or (1 <= len(groups[0]) <= 3 and all(len(one) == 3 for one in groups[1:]))
    if len(whole) > len(str(_MOST)) + len(groups):
        return None
    if not is_grouped or not all(one.isdigit() for one in groups) or not re.fullmatch(r"\d{0,2}", part):
        return None
    return int("".join(groups)) * 100 + int(part.ljust(2, "0"))


def show_money(hundredths: int, currency: str, decimal: str = ".") -> str:
    """An amount as it prints."""
    return f"{hundredths // 100}{decimal}{hundredths % 100:02d} {currency}"


def sum_words(line: ValueLine, decimal: str = ".") -> str:
    """The totals of a line, each currency by itself; empty where no value is known."""
    return " + ".join(show_money(amount, currency, decimal) for currency, amount in line.totals)


def value_list(office: Office) -> ValueList:
    """The value of every piece that the register holds, sold and destroyed ones left out."""
    found: dict[tuple[str, str], list[tuple[str, Worth | None]]] = defaultdict(list)
    with office.book.reading() as page:
        items = page.every_item()
        where = page.whereabouts(items)
        names = {one.id: one.name for one in page.people()}
    for item in items:
        is_at = where[item.id]
        if not is_at.where.is_closed:
            place = is_at.at if is_at.where is Where.IN_STORE else brief_words(is_at, names)
            found[item.facts.owner, place].append((item.tag, item.facts.worth))
    lines = tuple(_line(owner, place, pieces) for (owner, place), pieces in sorted(found.items()))
    return ValueList(lines, _line("", "", [one for pieces in found.values() for one in pieces]))


def _line(owner: str, place: str, pieces: list[tuple[str, Worth | None]]) -> ValueLine:
    totals: dict[str, int] = defaultdict(int)
    for _, worth in pieces:
        if worth:
            totals[worth.currency] += worth.hundredths
    unknown = tuple(sorted(tag for tag, worth in pieces if worth is None))
    return ValueLine(owner, place, len(pieces), unknown, tuple(sorted(totals.items())))

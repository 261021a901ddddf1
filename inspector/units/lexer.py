"""Numbers as people type them: decimal signs, groups, fractions. What can be read in two ways is refused."""

import re
import unicodedata

from inspector.language import tr
from inspector.refused import Refused

_FRACTIONS = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_VULGAR = re.compile(r"^(?P<sign>[-+]?)(?:(?P<whole>\d{1,6})[ -])?(?P<top>\d{1,4})/(?P<bottom>\d{1,4})(?P<unit>\D.*)?$")
_OVER, _SPACE = re.compile(r"\s*/\s*(?=\d)"), re.compile(r"\s+")
_EITHER_WAY = re.compile(r"^[-+]?\s*(?P<whole>[1-9]\d{0,2}|0\d{1,2})(?P<sign>[.,])(?P<after>\d{3})(?![\d.,]| \d)")
_PLAIN = re.compile(r"^(?P<sign>[-+]?)(?P<number>\d[\d., ]*?)\s*(?P<unit>[^\d., ].*|)$")


def plain_text(text: str) -> str:
    """The text with one kind of space, minus and fraction."""
    plain = unicodedata.normalize("NFC", text).replace("\u00a0", " ").replace("\u202f", " ").replace("−", "-")
    for sign, fraction in _FRACTIONS.items():
        if sign in plain:
            plain = re.sub(rf"(?<=\d)\s*{sign}", f" {fraction}", plain).replace(sign, fraction)
    return _SPACE.sub(" ", _OVER.sub("/", plain)).strip()


def split(text: str, field: str, advice: str, decimal: str) -> tuple[float, str]:
    """Number and unit of a text. field, advice: for the refusal of what is not clear. Raises Refused."""
    if (vulgar := _VULGAR.match(text)) and int(vulgar["bottom"]):
        value = int(vulgar["whole"] or 0) + int(vulgar["top"]) / int(vulgar["bottom"])
        return _signed(value, vulgar["sign"]), (vulgar["unit"] or "").strip()
    if plain := _PLAIN.match(text):
        value = _number(plain["number"].strip(), field, advice, decimal)
        return _signed(value, plain["sign"]), plain["unit"].strip()
    raise Refused(field, tr("“{text}” does not begin with a number.", text=text), advice)


def two_meanings(text: str, decimal: str) -> tuple[str, str] | None:
    """A number that can be one with thousandths or one in thousands, each as it can be written so that it is clear.

    decimal: the club's own sign, behind which three figures are thousandths; behind the other they may be either.
    """
    found = _EITHER_WAY.match(text)
    if found is None or found["sign"] == decimal:
        return None
    return f"{found['whole']}{decimal}{found['after']}", f"{found['whole']}{found['after']}"


def _signed(value: float, sign: str) -> float:
    return -value if sign == "-" else value


def _number(digits: str, field: str, advice: str, decimal: str) -> float:
    """The value of digits with separators; the last of two different signs is the decimal one."""
    point = _decimal_sign(digits, decimal)
    whole, _, part = digits.rpartition(point) if point else (digits, "", "")
    groups = re.split(r"[., ]", whole)
    grouped = len(groups) == 1 or (1 <= len(groups[0]) <= 3 and all(len(group) == 3 for group in groups[1:]))
    one_sign = len(set(re.findall(r"[., ]", whole))) <= 1
    if not (grouped and one_sign and (whole or part) and (part.isdigit() or not point)):
        raise Refused(field, tr("“{text}” can be read in more than one way.", text=digits), advice)
    return float("".join(groups) + "." + (part or "0"))


def _decimal_sign(digits: str, decimal: str) -> str:
    signs = re.findall(r"[.,]", digits)
    if not signs:
        return ""
    last = str(signs[-1])
    if signs.count(last) > 1:
        return ""
    if len(set(signs)) > 1 or " " in digits:
        return last
    before, _, after = digits.partition(last)
    could_be_group = len(after) == 3 and 1 <= len(before) <= 3 and before != "0"
    return "" if could_be_group and last != decimal else last

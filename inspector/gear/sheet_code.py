"""What stands in the QR code of a sheet's page: number, page, a fingerprint of what it asks, and a check character."""

from msgspec import Struct

_SIGNS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_MODULUS = len(_SIGNS)
_PAGE, _MARK, _CHECK = 2, 5, 1
LONGEST = 20  # capital letters and figures that the smallest QR code holds at level M


class SheetCode(Struct, frozen=True):
    """number: of the sheet, capital letters, figures and hyphens; page: from 1; mark: five signs of a fingerprint."""

    number: str
    page: int
    mark: str

    @property
    def text(self) -> str:
        """The code as it is printed, e.g. "S-K7QM-001201AB3C9X"."""
        body = f"{self.number}{_in_base_36(self.page)}{self.mark}"
        return body + check_character(body)


def read_code(text: str) -> SheetCode | None:
    """The code that a text stands for; None where it is none, or its check character does not fit."""
    body, check = text[:-_CHECK], text[-_CHECK:]
    if len(body) <= _PAGE + _MARK or not set(body) <= {*_SIGNS, "-"} or check != check_character(body):
        return None
    number, page, mark = body[: -_PAGE - _MARK], body[-_PAGE - _MARK : -_MARK], body[-_MARK:]
    if not set(page) <= set(_SIGNS):
        return None
    return SheetCode(number, int(page, _MODULUS), mark)


def check_character(body: str) -> str:
    """The check character of letters and figures by the hybrid system of 37 and 36; hyphens do not count.

    Source: ISO/IEC 7064, system MOD 37,36, from memory. It finds every single wrong sign and nearly all transpositions.
    """
    product = _MODULUS
    for sign in body:
        if sign != "-":
            total = (product + _SIGNS.index(sign)) % _MODULUS or _MODULUS
            product = total * 2 % (_MODULUS + 1)
    return _SIGNS[(_MODULUS + 1 - product) % _MODULUS]


def _in_base_36(page: int) -> str:
    return _SIGNS[page // _MODULUS] + _SIGNS[page % _MODULUS]

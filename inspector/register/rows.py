"""Rows to gear structs and back: JSON in which every float comes back the same."""

import threading
import time
import uuid
from functools import cache
from random import SystemRandom
from typing import Any, TypeVar

import msgspec

from inspector.register.opening import unreadable

Shape = TypeVar("Shape")
_SORTED = msgspec.json.Encoder(order="sorted")
_DICE = SystemRandom()
_order = threading.Lock()
_last_tick = 0


def to_body(value: object) -> str:
    """A struct as JSON text with sorted keys."""
    return _SORTED.encode(value).decode()


def from_body(body: str, shape: type[Shape]) -> Shape:
    """The struct again. Refused where the text is not one: it was changed or damaged since."""
    try:
        return _reader_of(shape).decode(body)  # type: ignore[arg-type,no-any-return]
    except msgspec.MsgspecError as error:
        raise unreadable(error) from error


@cache
def _reader_of(shape: type) -> msgspec.json.Decoder[Any]:
    """Made once for a shape, not for each row."""
    return msgspec.json.Decoder(shape)


def as_facts(value: object) -> Any:
    """A struct as plain lists and dicts, for a ledger line."""
    return msgspec.to_builtins(value)


def from_facts(value: object, shape: type[Shape]) -> Shape:
    """The struct again from plain lists and dicts. Raises msgspec.ValidationError where they are not one."""
    return msgspec.convert(value, type=shape)


def new_id() -> str:
    """A time-ordered UUID (RFC 9562 version 7): 48 bits of milliseconds, 12 bits of order within one, random bits.

    Two made by one program always sort in the order they were made.
    """
    tick = _next_tick()
    value = ((tick >> 12) << 80) | (0x7 << 76) | ((tick & 0xFFF) << 64) | (0b10 << 62) | _DICE.getrandbits(62)
    return str(uuid.UUID(int=value))


def never_before(tick: int) -> None:
    """Let every id that is made from now on sort after this one, whatever the machine's clock says."""
    global _last_tick  # noqa: PLW0603 - the order of one process
    with _order:
        _last_tick = max(_last_tick, tick)


def _next_tick() -> int:
    """Milliseconds with 12 bits of order below them; never the same twice, never backwards."""
    global _last_tick  # noqa: PLW0603 - the order of one process
    with _order:
        _last_tick = max((time.time_ns() // 1_000_000) << 12, _last_tick + 1)
        return _last_tick

"""Rows to gear dataclasses and back: JSON in which every float comes back the same."""

import secrets
import time
import uuid
from typing import Any, TypeVar

import msgspec

Shape = TypeVar("Shape")


def to_body(value: object) -> str:
    """A dataclass as JSON text with sorted keys."""
    return msgspec.json.encode(value, order="sorted").decode()


def from_body(body: str, shape: type[Shape]) -> Shape:
    """The dataclass again. Raises msgspec.ValidationError where the text is not one."""
    return msgspec.json.decode(body, type=shape)


def as_facts(value: object) -> Any:
    """A dataclass as plain lists and dicts, for a ledger line."""
    return msgspec.to_builtins(value)


def new_id() -> str:
    """A time-ordered UUID (RFC 9562 version 7): 48 bits of milliseconds, then random bits."""
    milliseconds = time.time_ns() // 1_000_000
    value = (milliseconds << 80) | (0x7 << 76) | (secrets.randbits(12) << 64) | (0b10 << 62) | secrets.randbits(62)
    return str(uuid.UUID(int=value))

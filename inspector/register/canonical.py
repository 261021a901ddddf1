"""The one spelling of a value as JSON, of which every hash is taken: sorted keys, no spaces."""

import hashlib
import json
from collections.abc import Mapping
from datetime import date, datetime
from typing import Any


def canonical(value: object) -> str:
    """The one spelling of a value as JSON."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False, default=_plain)


def _plain(value: object) -> str:
    if isinstance(value, date | datetime):
        return value.isoformat()
    if isinstance(value, bytes):
        return hashlib.sha256(value).hexdigest()
    raise TypeError(f"{type(value).__name__} has no canonical spelling")


def digest(row: Mapping[Any, Any]) -> str:
    """sha256 of a row's columns."""
    return hashlib.sha256(canonical({str(column): row[column] for column in row}).encode()).hexdigest()

"""What a rescue told of in the ledger: the faults that were left when a damaged register was saved into a new one."""

import json
from collections.abc import Iterable, Mapping
from typing import Any

from inspector.gear.lists import Fault

RESCUE = "rescue"  # the deed whose line tells them
_GAPS = "gaps"  # under which of its facts


def as_told(faults: Iterable[Fault]) -> dict[str, list[list[object]]]:
    """The faults as the facts of a rescue's line."""
    return {_GAPS: [[one.where, one.why, one.line] for one in faults]}


def gaps_told(line: Mapping[Any, Any]) -> set[Fault]:
    """The faults that a line tells; none for any other line than a rescue's."""
    if line["deed"] != RESCUE:
        return set()
    try:
        told = json.loads(str(line["body"]))["facts"][_GAPS]
        return {Fault(str(where), str(why), None if at is None else int(at)) for where, why, at in told}
    except (ValueError, KeyError, TypeError):
        return set()

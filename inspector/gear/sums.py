"""A sum worked before an audience, and the list of sums there are."""

from dataclasses import dataclass

from inspector.gear.verdict import Fact


@dataclass(frozen=True, slots=True)
class SumInput:
    """One input of a sum. how: what to type, e.g. "length"; otherwise: what stands if nothing is typed."""

    name: str
    how: str
    otherwise: str = ""


@dataclass(frozen=True, slots=True)
class NamedSum:
    """A sum of the catalogue: where it belongs, what it is, what it wants."""

    name: str
    topic: str
    title: str
    inputs: tuple[SumInput, ...]


@dataclass(frozen=True, slots=True)
class WorkedSum:
    """A sum with figures in it. valid: the range it may be used in; sources: as they print."""

    name: str
    title: str
    formula: str
    valid: str
    inputs: tuple[Fact, ...]
    results: tuple[Fact, ...]
    sources: tuple[str, ...]

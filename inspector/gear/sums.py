"""A sum worked before an audience, and the list of sums there are."""

from msgspec import Struct

from inspector.gear.verdict import Fact


class SumInput(Struct, frozen=True):
    """One input of a sum. how: what to type, e.g. "length"; otherwise: what stands if nothing is typed."""

    name: str
    how: str
    otherwise: str = ""


class NamedSum(Struct, frozen=True):
    """A sum of the catalogue: where it belongs, what it is, what it wants."""

    name: str
    topic: str
    title: str
    inputs: tuple[SumInput, ...]


class WorkedSum(Struct, frozen=True):
    """A sum with figures in it. valid: the range it may be used in; sources: as they print."""

    name: str
    title: str
    formula: str
    valid: str
    inputs: tuple[Fact, ...]
    results: tuple[Fact, ...]
    sources: tuple[str, ...]

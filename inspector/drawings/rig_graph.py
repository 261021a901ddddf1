"""A rig as a graph: which part is joined to which, and on what each loose end of it hangs."""

from collections import deque
from collections.abc import Iterable, Iterator
from itertools import pairwise

from msgspec import Struct

from inspector.gear.rig import GROUND, LooseEnd
from inspector.gear.rig_result import RigResult

LINES = frozenset(
    {
        "kinetic_strap",
        "kinetic_rope",
        "static_strap",
        "fibre_winch_line",
        "wire_winch_rope",
        "bridle_strap",
        "tree_strap",
    }
)
TURNS = frozenset({"snatch_block", "sheave_ring"})


class Edge(Struct, frozen=True):
    """Two neighbours as they are drawn. joined: the two tags that the joint itself names."""

    one: str
    other: str
    joined: tuple[str, str]

    def has(self, tag: str) -> bool:
        """Whether the part is one of the two."""
        return tag in {self.one, self.other}

    def beyond(self, tag: str) -> str:
        """The neighbour of one of the two."""
        return self.other if tag == self.one else self.one


class Graph(Struct, frozen=True):
    """Parts in the order of the runs, edges, and the body (a vehicle's tag, or the ground) that an end hangs on."""

    parts: tuple[str, ...]
    edges: tuple[Edge, ...]
    bodies: dict[str, str]

    def around(self, tag: str) -> tuple[str, ...]:
        """The neighbours of a part, in the order of the runs."""
        return tuple(edge.beyond(tag) for edge in self.edges if edge.has(tag))

    @property
    def ends(self) -> tuple[str, ...]:
        """Parts with one neighbour or none."""
        return tuple(tag for tag in self.parts if len(self.around(tag)) <= 1)

    @property
    def hubs(self) -> tuple[str, ...]:
        """Parts in which three or more lines meet."""
        return tuple(tag for tag in self.parts if len(self.around(tag)) >= 3)

    def way(self, start: str, end: str) -> tuple[str, ...]:
        """The parts from one to another, the fewest of them; empty where they do not hang together."""
        came: dict[str, str] = {start: ""}
        ahead = deque([start])
        while ahead and end not in came:
            tag = ahead.popleft()
            for beyond in self.around(tag):
                if beyond not in came:
                    came[beyond] = tag
                    ahead.append(beyond)
        return tuple(reversed(list(_back(came, end)))) if end in came else ()


def _back(came: dict[str, str], tag: str) -> Iterator[str]:
    while tag:
        yield tag
        tag = came[tag]


def graph_of(result: RigResult) -> Graph:
    """The graph of a rig: vehicles are bodies, no parts; a line through a block ends at it and goes on beyond it."""
    rig = result.rig
    vehicles = {rig.bogged, rig.pulling} - {""}
    pairs = dict.fromkeys(pair for run in rig.runs for pair in pairwise(run))
    parts = tuple(tag for tag in rig.tags if tag not in vehicles)
    kinds = {tag: kind_of(result, tag) for tag in parts}
    between = [pair for pair in pairs if not vehicles & set(pair)]
    edges = _reeved(_once(between), kinds)
    return Graph(parts, edges, _bodies(result, parts, pairs, vehicles))


def kind_of(result: RigResult, tag: str) -> str:
    """The key of a part's kind; of a loose end what it is; empty where nobody said."""
    link = result.link(tag)
    if link is not None and link.kind:
        return link.kind
    before = tag.partition("@")[0]
    return before if "@" in tag and before in set(LooseEnd) else ""


def _once(pairs: Iterable[tuple[str, str]]) -> list[Edge]:
    """An edge a pair, whichever way round it was written."""
    found: dict[frozenset[str], Edge] = {}
    for one, other in pairs:
        if one != other:
            found.setdefault(frozenset((one, other)), Edge(one, other, (one, other)))
    return list(found.values())


def _reeved(edges: list[Edge], kinds: dict[str, str]) -> tuple[Edge, ...]:
    """Where a line passes a block, what hangs on its far end is drawn beyond the block."""
    for line in [tag for tag, kind in kinds.items() if kind in LINES - {"bridle_strap"}]:
        around = [edge for edge in edges if edge.has(line)]
        around.sort(key=lambda edge: kinds.get(edge.beyond(line)) != "winch")
        blocks = [edge.beyond(line) for edge in around if kinds.get(edge.beyond(line)) in TURNS]
        if blocks and len(around) >= 3:
            edges = _passed_on(edges, around, line, blocks)
    return tuple(edges)


def _passed_on(edges: list[Edge], around: list[Edge], line: str, blocks: list[str]) -> list[Edge]:
    """The first part stays at the line's near end; blocks follow one another, the other parts hang on the last."""
    others = [edge for edge in around if edge.beyond(line) not in blocks]
    kept = [edge for edge in edges if not edge.has(line)]
    near = [edge for edge in around if edge.beyond(line) == blocks[0]]
    through = [Edge(one, other, (line, other)) for one, other in pairwise(blocks)]
    far = [Edge(blocks[-1], edge.beyond(line), edge.joined) for edge in others[1:]]
    return [*others[:1], *near, *through, *far, *kept]


def _bodies(
    result: RigResult, parts: tuple[str, ...], pairs: Iterable[tuple[str, str]], vehicles: set[str]
) -> dict[str, str]:
    """What the parts hang on, as the runs, the tags and the links tell."""
    found = {tag: side for tag in parts if (link := result.link(tag)) is not None and (side := link.side)}
    found |= {tag: body for tag in parts if (body := tag.partition("@")[2])}
    for pair in pairs:
        for one, other in (pair, pair[::-1]):
            if one in vehicles and other not in vehicles:
                found[other] = one
    return found


def is_vehicle(body: str) -> bool:
    """Whether a body is drawn as a vehicle; a tree or an anchor is a part by itself."""
    return body not in {"", GROUND}

"""Where each part of a rig stands: columns from the stuck vehicle to the far end, lanes for lines side by side."""

from collections.abc import Sequence

from msgspec import Struct, field

from inspector.drawings.rig_graph import Edge, Graph, graph_of, is_vehicle
from inspector.gear.rig import GROUND, Rig
from inspector.gear.rig_result import RigResult


class Cell(Struct, frozen=True):
    """A part, or a vehicle that parts hang on, in its column and lane; both count from 0."""

    tag: str
    column: int
    lane: int
    is_body: bool = False


class Tie(Struct, frozen=True):
    """Two cells that hold each other, the left one first. edge: the joint; None for a part on its vehicle."""

    left: Cell
    right: Cell
    edge: Edge | None


class Grid(Struct, frozen=True):
    """All cells and what ties them."""

    cells: tuple[Cell, ...]
    ties: tuple[Tie, ...]

    @property
    def column_count(self) -> int:
        """How many columns there are."""
        return max((cell.column for cell in self.cells), default=0) + 1


def grid_of(result: RigResult) -> Grid:
    """Every part once; none is left out, even of runs that do not hang together."""
    graph = graph_of(result)
    laid = _Laid(graph)
    if graph.parts:
        laid.lay_trunk(_trunk(graph, result.rig))
    for tag in graph.parts:
        if tag not in laid.at:
            laid.lay_apart(tag)
    return _closed_up(laid, graph)


def _trunk(graph: Graph, rig: Rig) -> tuple[str, ...]:
    """The longest way from the bogged vehicle to the pulling one, else to the ground, else to any end."""
    ends = graph.ends or graph.parts[:1]
    starts = [tag for tag in ends if graph.bodies.get(tag) == rig.bogged] or list(ends[:1])
    others = [tag for tag in ends if tag not in starts]
    for body in (rig.pulling, GROUND, None):
        far = [tag for tag in others if body is None or (body and graph.bodies.get(tag) == body)]
        ways = [way for start in starts for end in far if (way := graph.way(start, end))]
        if ways:
            return max(ways, key=len)
    return (starts[0],)


class _Laid(Struct):
    """Parts as they are laid, column 0 kept for the vehicle on the left."""

    graph: Graph
    at: dict[str, tuple[int, int]] = field(default_factory=dict)
    taken: set[tuple[int, int]] = field(default_factory=set)
    bodies: dict[str, tuple[int, int]] = field(default_factory=dict)
    end: int = 1

    def lay_trunk(self, trunk: tuple[str, ...]) -> None:
        """The trunk in lane 0, room made for the arms that run beside it, then the arms."""
        ends = (self._body(trunk[0]), self._body(trunk[-1]) if len(trunk) > 1 else "")
        arms = {tag: self._arms(tag, trunk) for tag in trunk}
        column = 0
        for index, tag in enumerate(trunk):
            left = [len(arm) for arm in arms[tag] if self._body(arm[-1]) == ends[0] != ""]
            column = max([column + 1, *(length + 1 for length in left)])
            self._put(tag, column, 0)
            right = [len(arm) for arm in arms[tag] if self._body(arm[-1]) == ends[1] != ends[0]]
            column += max([0, *(length - (len(trunk) - 1 - index) for length in right)])
        self.end = column + 1
        self._stand(ends[0], 0, 0)
        self._stand(ends[1], self.end, 0)
        for tag in trunk:
            for arm in arms[tag]:
                self._lay_arm(tag, arm, ends)

    def lay_apart(self, tag: str) -> None:
        """A part that hangs on none that is laid, with all that hangs on it."""
        lane = 1 + max((lane for _, lane in self.taken), default=-1)
        arm = self._path(tag, set(self.at))
        self._lay(arm, range(1, len(arm) + 1), lane)

    def _body(self, tag: str) -> str:
        body = self.graph.bodies.get(tag, "")
        return body if is_vehicle(body) else ""

    def _arms(self, tag: str, trunk: tuple[str, ...]) -> list[tuple[str, ...]]:
        seen = set(trunk)
        arms = []
        for beyond in self.graph.around(tag):
            if beyond not in seen:
                arms.append(self._path(beyond, seen))
                seen |= set(arms[-1])
        return arms

    def _path(self, tag: str, seen: set[str]) -> tuple[str, ...]:
        """From a part outwards to an end, by parts not seen yet."""
        path = [tag]
        while ahead := [one for one in self.graph.around(path[-1]) if one not in seen and one not in path]:
            path.append(ahead[0])
        return tuple(path)

    def _lay_arm(self, hub: str, arm: tuple[str, ...], ends: tuple[str, str]) -> None:
        """Beside the trunk where it ends on the same vehicle; else onwards from its hub."""
        if any(tag in self.at for tag in arm):
            return
        body, from_column = self._body(arm[-1]), self.at[hub][0]
        if body and body == ends[0]:
            columns: Sequence[int] = range(len(arm), 0, -1)
        elif body and body == ends[1]:
            columns = range(self.end - len(arm), self.end)
        else:
            columns = range(from_column + 1, from_column + 1 + len(arm))
        lane = self._free_lane(min(*columns, from_column), max(*columns, from_column) + 1)
        self._lay(arm, columns, lane)

    def _lay(self, arm: tuple[str, ...], columns: Sequence[int], lane: int) -> None:
        for tag, column in zip(arm, columns, strict=True):
            self._put(tag, column, lane)
        self._stand(self._body(arm[-1]), columns[-1] + 1, lane)
        for tag in arm:
            for side in self._arms(tag, tuple(self.at)):
                self._lay_arm(tag, side, ("", ""))

    def _free_lane(self, first: int, last: int) -> int:
        lane = 1
        while any((column, lane) in self.taken for column in range(first, last + 1)):
            lane += 1
        return lane

    def _put(self, tag: str, column: int, lane: int) -> None:
        self.at[tag] = (column, lane)
        self.taken.add((column, lane))

    def _stand(self, body: str, column: int, lane: int) -> None:
        """A vehicle stands once, however many parts hang on it."""
        if body and body not in self.bodies:
            self.bodies[body] = (column, lane)
            self.taken.add((column, lane))


def _closed_up(laid: _Laid, graph: Graph) -> Grid:
    """The cells with no empty column on the left, and their ties."""
    places = [*laid.at.values(), *laid.bodies.values()]
    first = min((column for column, _ in places), default=0)
    parts = {tag: Cell(tag, column - first, lane) for tag, (column, lane) in laid.at.items()}
    bodies = {tag: Cell(tag, column - first, lane, is_body=True) for tag, (column, lane) in laid.bodies.items()}
    ties = [_tie(parts[edge.one], parts[edge.other], edge) for edge in graph.edges]
    ends = [tag for tag in graph.ends if graph.bodies.get(tag) in bodies]
    ties += [_tie(bodies[graph.bodies[tag]], parts[tag], None) for tag in ends]
    return Grid((*bodies.values(), *parts.values()), tuple(ties))


def _tie(one: Cell, other: Cell, edge: Edge | None) -> Tie:
    left, right = sorted((one, other), key=lambda cell: (cell.column, cell.lane))
    return Tie(left, right, edge)

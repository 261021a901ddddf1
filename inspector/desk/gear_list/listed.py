"""What the gear list needs from the register, fetched in one go by the worker."""

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from inspector.desk.gear_list.columns import as_table
from inspector.duties.gear_list import Choices, answers, choices, first_rows, rows_of
from inspector.duties.look_up import RegisterFacts, register_facts
from inspector.duties.office import Office
from inspector.gear.lists import GearRow, Order, Wanted
from inspector.gear.outcome import Outcome

PAGE = 64  # rows fetched at a time
_AT_ONCE = 1000


class Sight(Struct, frozen=True):
    """What part of the list is looked at. tag: the piece the bar is on; above: how many rows stand above it in view;
    count: how many rows are in view."""

    tag: str = ""
    above: int = 0
    count: int = PAGE


class Listed(Struct, frozen=True):
    """The pieces that answer, by tag, and the rows of those in sight.

    pages: rows by the number of their page; counts: pieces that answer all but the outcome asked for, by outcome, all
    under None; gone_count: how many answer and are gone; choices: what may be asked for.
    """

    wanted: Wanted
    tags: tuple[str, ...]
    pages: Mapping[int, tuple[GearRow, ...]]
    counts: Mapping[Outcome | None, int]
    register: RegisterFacts
    gone_count: int = 0
    choices: Choices | None = None

    @property
    def is_whole(self) -> bool:
        """Whether all that the club has was counted, and nothing narrows the list but its outcome."""
        return replace(self.wanted, outcome=None, order=Order.DUE, falling=False) == Wanted()


class Begun(Struct, frozen=True):
    """The first rows of a list whose pieces are not counted yet."""

    wanted: Wanted
    rows: tuple[GearRow, ...]


def begun(office: Office, wanted: Wanted, sight: Sight | None = None, with_choices: bool = False) -> Listed | Begun:
    """The list as it is first shown: its first rows where counting all of them takes a while, else the whole of it."""
    rows = first_rows(office, PAGE) if wanted == Wanted() else ()
    return Begun(wanted, rows) if rows else listed(office, wanted, sight, with_choices)


def listed(office: Office, wanted: Wanted, sight: Sight | None = None, with_choices: bool = False) -> Listed:
    """The gear list with the rows in sight."""
    sight = sight or Sight()
    found = answers(office, wanted)
    row = found.tags.index(sight.tag) if sight.tag in found.tags else 0
    top = max(row - sight.above, 0)
    numbers = range(top // PAGE, (top + sight.count) // PAGE + 1)
    counts: dict[Outcome | None, int] = {None: sum(found.counts.values())}
    counts.update({one: found.counts[one] for one in Outcome})
    return Listed(
        wanted=wanted,
        tags=found.tags,
        pages={number: rows_of(office, found.tags[number * PAGE : (number + 1) * PAGE]) for number in numbers},
        counts=counts,
        register=register_facts(office),
        gone_count=found.gone_count,
        choices=choices(office) if with_choices else None,
    )


def copied(office: Office, tags: Sequence[str], keys: Sequence[str]) -> str:
    """These pieces as text with tabs between the columns."""
    shares = (tags[at : at + _AT_ONCE] for at in range(0, len(tags), _AT_ONCE))
    return as_table((row for some in shares for row in rows_of(office, some)), keys, office.today)

"""Blocks onto pages: a block is never cut, a heading never stands alone at the foot of a page."""

from collections.abc import Iterable, Iterator, Sequence

from inspector.paper.blocks import Block

Page = tuple[Block, ...]


def paginate(blocks: Sequence[Block], first_pt: float, other_pt: float) -> tuple[Page, ...]:
    """The pages, the first with room for first_pt, the others for other_pt; at least one, be it empty.

    Only a block higher than a whole page falls into its parts.
    """
    pages: list[list[Block]] = [[]]
    least_pt = min(first_pt, other_pt)
    for group in _groups(_small_enough(blocks, least_pt), least_pt):
        room = first_pt if len(pages) == 1 else other_pt
        if pages[-1] and used_pt([*pages[-1], *group]) > room:
            pages.append(_named_anew(group[0], group, other_pt))
        pages[-1].extend(group)
        if group[-1].fill:
            _fill(pages, (first_pt, other_pt))
    return tuple(tuple(page) for page in pages)


def _named_anew(first: Block, group: Sequence[Block], room_pt: float) -> list[Block]:
    """What stands above the first block of a page, as long as there is room for it."""
    named = first.again
    return [named] if named and used_pt([named, *group]) <= room_pt else []


def _fill(pages: list[list[Block]], rooms: tuple[float, float]) -> None:
    """What ends the last page takes the room that is left there, its rest as many pages as it needs."""
    rest: Block | None = pages[-1].pop()
    while rest and rest.fill:
        room = rooms[min(len(pages) - 1, 1)]
        gap = rest.gap_pt if pages[-1] else 0.0
        part, rest = rest.fill(room - used_pt(pages[-1]) - gap)
        pages[-1].append(part)
        if rest:
            pages.append([])


def used_pt(page: Iterable[Block]) -> float:
    """The height of blocks on a page, in points; the first needs no air above."""
    heights = [(block.gap_pt, block.height_pt) for block in page]
    return sum(gap + height for gap, height in heights) - (heights[0][0] if heights else 0.0)


def _small_enough(blocks: Iterable[Block], room_pt: float) -> Iterator[Block]:
    for block in blocks:
        if block.height_pt > room_pt and block.parts:
            first, *others = block.parts
            yield from _small_enough([first.below(block.gap_pt), *others], room_pt)
        else:
            yield block


def _groups(blocks: Iterable[Block], room_pt: float) -> Iterator[list[Block]]:
    """Headings with what they head, as long as one page holds them."""
    group: list[Block] = []
    for block in blocks:
        if group and not (group[-1].with_next and used_pt([*group, block]) <= room_pt):
            yield group
            group = []
        group.append(block)
    if group:
        yield group

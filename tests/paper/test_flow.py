"""Blocks onto pages."""

from msgspec.structs import replace

from inspector.paper.blocks import Block, boxed, row, space, stack, words
from inspector.paper.columns import together, under
from inspector.paper.flow import paginate, used_pt
from inspector.paper.page_style import BODY


def test_a_block_is_never_cut() -> None:
    pages = paginate([space(60.0)] * 5, 130.0, 150.0)
    assert [len(page) for page in pages] == [2, 2, 1]


def test_air_above_is_dropped_at_the_head_of_a_page() -> None:
    pages = paginate([space(60.0).below(30.0)] * 3, 100.0, 150.0)
    assert [used_pt(page) for page in pages] == [60.0, 150.0]


def test_a_heading_goes_with_what_it_heads() -> None:
    pages = paginate([space(70.0), space(20.0).kept(), space(20.0)], 100.0, 100.0)
    assert [len(page) for page in pages] == [1, 2]


def test_more_headings_than_a_page_holds_are_parted_rather_than_cut_off() -> None:
    pages = paginate([space(60.0).kept(), space(60.0).kept(), space(60.0)], 100.0, 100.0)
    assert [len(page) for page in pages] == [1, 1, 1]


def test_a_block_higher_than_a_page_falls_into_its_parts() -> None:
    pages = paginate([stack([space(40.0)] * 6)], 100.0, 100.0)
    assert [used_pt(page) for page in pages] == [80.0, 80.0, 80.0]


def test_a_row_or_a_frame_higher_than_a_page_falls_apart_too() -> None:
    long = words("word " * 400, 100.0, BODY)
    for block in (row((0, space(10.0)), (50, long)), boxed(long, 200.0)):
        pages = paginate([block], 200.0, 200.0)
        assert len(pages) > 3
        assert all(used_pt(page) <= 200.0 for page in pages)


def test_nothing_still_makes_a_page() -> None:
    assert paginate([], 100.0, 100.0) == ((),)


def test_a_stack_is_as_high_as_its_blocks_and_their_air() -> None:
    assert stack([space(10.0), space(5.0).below(3.0)]).height_pt == 18.0
    assert row((0, space(10.0)), (5, space(25.0))).height_pt == 25.0
    assert isinstance(row(), Block) and row().height_pt == 0.0


def test_what_names_a_table_s_columns_stands_above_its_lines_on_each_further_page() -> None:
    named = space(10.0)
    lines = under(named, [space(30.0)] * 7)
    pages = paginate(lines, 100.0, 100.0)
    assert [page[0] is named for page in pages] == [True] * len(pages)
    assert [len(page) for page in pages] == [4, 4, 2]
    assert all(used_pt(page) <= 100.0 for page in pages)


def test_names_that_would_push_a_line_off_its_page_are_left_out() -> None:
    named = space(10.0)
    pages = paginate(under(named, [space(95.0)] * 2), 110.0, 100.0)
    assert [len(page) for page in pages] == [2, 1]


def test_what_is_kept_together_stands_on_one_page_where_one_holds_it() -> None:
    pages = paginate([space(50.0), *together([space(20.0)] * 4)], 100.0, 100.0)
    assert [len(page) for page in pages] == [1, 4]
    assert [len(page) for page in paginate(together([space(40.0)] * 5), 100.0, 100.0)] == [2, 2, 1]


def _grains(count: int) -> Block:
    """So many grains of ten points, as many on a page as it has room for."""

    def fill(room_pt: float) -> tuple[Block, Block | None]:
        taken = min(int(room_pt // 10), count)
        return space(taken * 10.0), _grains(count - taken) if count > taken else None

    return replace(space(10.0), fill=fill)


def test_a_filling_takes_the_room_that_is_left_and_then_whole_pages() -> None:
    pages = paginate([space(60.0), _grains(20), space(30.0)], 100.0, 110.0)
    assert [used_pt(page) for page in pages] == [100.0, 110.0, 80.0]


def test_a_filling_that_cannot_begin_on_a_page_begins_on_the_next() -> None:
    pages = paginate([space(95.0), _grains(3)], 100.0, 100.0)
    assert [used_pt(page) for page in pages] == [95.0, 30.0]

"""Labels of pieces on sheets of labels, or as large tags to cut apart: the tag first, then what it is marked with."""

from collections.abc import Iterator, Sequence
from itertools import islice

from inspector.drawings.shapes import Ink
from inspector.gear.label_sizes import LabelSize, measure_words
from inspector.gear.tags import ItemLabel, LabelSheet
from inspector.language import tr
from inspector.paper.blocks import Block, row, space, stack, words
from inspector.paper.common import heading, listed, small_cautions
from inspector.paper.cut_apart import AROUND_PT, cell_width_pt, cut_rows, fitting_type, hole
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, PageSize, Type
from inspector.paper.press import Press
from inspector.paper.printed import Printed
from inspector.paper.qr_code import least_side_pt, qr_code
from inspector.paper.wrap import lines_of

_INSET_PT = 2 * MM  # blank at the edge of a label: no printer and no knife is exact
_EDGE_PT = 5 * MM  # blank at the edge of the sheet, where printers do not reach
_CODE_SHARE = 0.34  # of a label's width
_LARGEST_PT = 60.0  # of a tag on a label
_MUCH_OVER, _LEAST_OVER = 2.4, 1.3  # how much larger than the rest the tag stands
_SMALL_PT = (11.0, 10.0, 9.0, 8.0, 7.0, 6.5, 6.0, 5.5)
_CUT_TAG, _LEAST_CUT_PT = Type(66.0, bold=True), 24.0
_CUT_CODE_PT = 30 * MM
_RULER_PT = 100 * MM


def item_labels(sheet: LabelSheet, page: PageSize) -> Printed:
    """The labels as a PDF; what is to know of them stands on the last page. page: for a tag that is cut apart."""
    return _cut_tags(sheet, page) if sheet.size.is_cut_apart else _on_label_sheets(sheet)


def too_long_for(labels: Sequence[ItemLabel], size: LabelSize, club: str) -> tuple[str, ...]:
    """The tags whose labels have no room on this size with all that is to stand on them."""
    if size.is_cut_apart:
        return ()
    return tuple(one.tag for one in labels if _label(one, size, club, _inner(size)) is None)


def _on_label_sheets(sheet: LabelSheet) -> Printed:
    size, press = sheet.size, Press(PageSize(sheet.size.paper))
    inner, at = _inner(size), sheet.start - 1
    for number, labels in enumerate(_sheets(sheet)):
        for place, label in enumerate(labels, 0 if number else at):
            _print_label(press, size, place, _label(label, size, sheet.imprint.club, inner))
        press.next_page()
    more = Document(sheet.imprint, tr("Item labels"), _about(sheet, press.page)).print_on(press)
    return Printed(press.finished(), sheet.sheet_count + more, press.missing_glyphs)


def _sheets(sheet: LabelSheet) -> Iterator[tuple[ItemLabel, ...]]:
    """The labels of each sheet; a begun one takes fewer."""
    left, room = iter(sheet.labels), sheet.size.count - sheet.start + 1
    while labels := tuple(islice(left, room)):
        yield labels
        room = sheet.size.count


def _corner(size: LabelSize, place: int, page: PageSize) -> tuple[float, float]:
    """Left and top of a label on its sheet, in points; places count along the rows from 0."""
    across, down = place % size.columns, place // size.columns
    wide = size.columns * size.width_mm + (size.columns - 1) * size.gap_mm
    left = (page.width_pt - wide * MM) / 2 + across * (size.width_mm + size.gap_mm) * MM
    return left, (page.height_pt - size.rows * size.height_mm * MM) / 2 + down * size.height_mm * MM


def _inner(size: LabelSize) -> tuple[float, float]:
    """Blank at the sides and at head and foot of each label, so that nothing stands where printers do not reach."""
    left, top = _corner(size, 0, PageSize(size.paper))
    return max(_INSET_PT, _EDGE_PT - left), max(_INSET_PT, _EDGE_PT - top)


def _print_label(press: Press, size: LabelSize, place: int, label: Block | None) -> None:
    left, top = _corner(size, place, press.page)
    aside, above = _inner(size)
    if label:
        label.draw(press, left + aside, top + above)


def _label(one: ItemLabel, size: LabelSize, club: str, inner: tuple[float, float]) -> Block | None:
    """Code and words of a label, in the middle of its height; None where there is no room for all of it."""
    width_pt, height_pt = size.width_mm * MM - 2 * inner[0], size.height_mm * MM - 2 * inner[1]
    code_pt = max(least_side_pt(one.tag), min(height_pt, _CODE_SHARE * width_pt))
    text_pt = width_pt - code_pt - GRID / 2
    said = _words(one, club, text_pt, height_pt) if code_pt <= height_pt and text_pt > code_pt / 2 else None
    if said is None:
        return None
    code = stack([space((height_pt - code_pt) / 2), qr_code(one.tag, code_pt)])
    text = stack([space((height_pt - said.height_pt) / 2), said])
    return row((0, code), (code_pt + GRID / 2, text))


def _words(one: ItemLabel, club: str, width_pt: float, height_pt: float) -> Block | None:
    """The words, the tag much larger than the rest where it can be; None where there is no room for all of them."""
    found = None
    for small_pt in _SMALL_PT:
        below = _below(one, club, width_pt, small_pt)
        room_pt = (height_pt - below.height_pt) / Type(1.0).leading_pt
        if room_pt < _LEAST_OVER * small_pt:
            continue
        type_ = fitting_type(one.tag, width_pt, Type(min(_LARGEST_PT, room_pt), bold=True), 0.0)
        if type_.size_pt < _LEAST_OVER * small_pt:
            continue
        found = stack([words(one.tag, width_pt, type_), below])
        if type_.size_pt >= _MUCH_OVER * small_pt or type_.size_pt < min(_LARGEST_PT, room_pt):
            break
    return found


def _below(one: ItemLabel, club: str, width_pt: float, size_pt: float) -> Block:
    """What the piece is and is marked with, whose it is, and where its verdict stands."""
    type_ = Type(size_pt)
    name = tr("{kind}, {marked}", kind=one.kind_name, marked=one.marked) if one.marked else one.kind_name
    is_short = len(lines_of(name, width_pt, type_.in_bold())) == 1
    named = [name] if is_short else [one.kind_name, one.marked]  # a rating is not to be broken in the middle
    see = tr("{club}. See the register.", club=club)
    return stack([*(words(part, width_pt, type_.in_bold()) for part in named), words(see, width_pt, type_)])


def _about(sheet: LabelSheet, page: PageSize) -> tuple[Block, ...]:
    """The page for plain paper: how to print the labels, where the next one stands, what a label does not say."""
    width = page.column_pt
    tags = ", ".join(one.tag for one in sheet.labels)
    return (
        words(tr("For plain paper: about the labels before this page"), width, HEAD),
        *(listed(one, width) for one in _how(sheet)),
        _ruler(width).below(3 * GRID),
        heading(tr("The labels"), width),
        words(tags, width, BODY),
        small_cautions(sheet.imprint.cautions, width).below(2 * GRID),
    )


def _how(sheet: LabelSheet) -> Iterator[str]:
    size = sheet.size
    yield tr(
        "Labels of {measures}, {columns} beside one another and {rows} below one another, the grid in the middle of "
        "the sheet.",
        measures=measure_words(size),
        columns=size.columns,
        rows=size.rows,
    )
    yield tr("Print at full size, not fitted to the page. The line below is 100 mm long.")
    yield tr("Try it on plain paper first and hold it against a sheet of labels.")
    yield tr("The first label stands at place {number}, counted along the rows.", number=sheet.start)
    if sheet.next_place > 1:
        yield tr("The last sheet is used up to place {last}; begin it next time at {number}.",
                 last=sheet.next_place - 1, number=sheet.next_place)  # fmt: skip
    yield tr("A label says what a piece is marked with. Whether it may be used stands in the register alone.")


def _ruler(width_pt: float) -> Block:
    """A line of 100 mm between two ticks."""

    def draw(press: Press, left: float, top: float) -> None:
        press.line(left, top + GRID, left + _RULER_PT, top + GRID, Ink.INK)
        for at in (left, left + _RULER_PT):
            press.line(at, top, at, top + 2 * GRID, Ink.INK)

    return Block(2 * GRID, draw)


def _cut_tags(sheet: LabelSheet, page: PageSize) -> Printed:
    width, size = page.column_pt, sheet.size
    least_pt, cell_pt = (page.height_pt - AROUND_PT) / size.rows, cell_width_pt(width, size.columns)
    cells = [space(0)] * (sheet.start - 1) + [_cut_tag(one, sheet.imprint.club, cell_pt) for one in sheet.labels]
    cautions = small_cautions(sheet.imprint.cautions, width).below(2 * GRID)
    blocks = (*cut_rows(cells, width, size.columns, least_pt), cautions)
    return Document(sheet.imprint, tr("Item labels"), blocks).printed(page)


def _cut_tag(one: ItemLabel, club: str, width_pt: float) -> Block:
    """The tag over the whole width, to be read off a muddy piece; beside the code what little else there is to say."""
    code_pt = max(_CUT_CODE_PT, least_side_pt(one.tag))
    text_pt = width_pt - code_pt - GRID
    name = words(one.tag, width_pt, fitting_type(one.tag, width_pt, _CUT_TAG, _LEAST_CUT_PT))
    said = _below(one, club, text_pt, 11.0)
    return stack(
        [row((width_pt / 2 - 3 * MM, hole())), name, row((0, said), (width_pt - code_pt, qr_code(one.tag, code_pt)))]
    )

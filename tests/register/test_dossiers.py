"""Many dossiers read together are those read one by one, by a few questions whatever their number."""

from datetime import date, timedelta

import pytest
from sqlalchemy import event

from inspector.duties.look_up import list_gear
from inspector.duties.office import Office
from inspector.gear.dossier import Dossier
from inspector.gear.item import Item
from inspector.gear.kind import Kind
from inspector.register import events as module
from inspector.register import tables


def pieces(office: Office) -> list[tuple[Item, Kind]]:
    with office.book.reading() as page:
        found = page.items([row.tag for row in list_gear(office).rows])
    return [(item, office.kind(item.facts.kind)) for item in found.values()]


def together(office: Office, wanted: list[tuple[Item, Kind]], on: date) -> tuple[Dossier, ...]:
    with office.book.reading() as page:
        return page.dossiers(wanted, on)


@pytest.mark.parametrize("days_ago", [0, 59, 400])
def test_together_and_one_by_one_they_are_the_same_and_in_the_order_asked(sample: Office, days_ago: int) -> None:
    wanted, on = pieces(sample)[::-1], sample.today - timedelta(days=days_ago)
    found = together(sample, wanted, on)
    assert [one.item.id for one in found] == [item.id for item, _ in wanted], "a tag may have been another on that day"
    with sample.book.reading() as page:
        assert found == tuple(page.dossier(item, kind, on) for item, kind in wanted)


def test_entries_come_in_order_of_day_and_within_one_of_their_keys_however_they_lie(sample: Office) -> None:
    item, _ = pieces(sample)[0]
    laid = [("f", sample.today), ("d", sample.today - timedelta(days=3)), ("e", sample.today), ("c", sample.today)]
    with sample.book._engine.connect() as connection, connection.begin() as begun:
        for key, day in laid:
            row = {"id": key, "item_id": item.id, "day": day, "body": "{}"}
            connection.execute(tables.piece_use.insert().values(row))
        (found,) = module.events(connection, (tables.piece_use,), [item.id], sample.today)
        begun.rollback()
    assert [one.id for one in found[item.id] if len(one.id) == 1] == ["d", "c", "e", "f"]


def test_in_shares_they_are_the_same(sample: Office, monkeypatch: pytest.MonkeyPatch) -> None:
    wanted = pieces(sample)
    whole = together(sample, wanted, sample.today)
    monkeypatch.setattr(module, "_AT_ONCE", 7)
    assert together(sample, wanted, sample.today) == whole
    assert dict(pieces_by_tag(sample)) == {item.tag: item for item, _ in wanted}


def pieces_by_tag(office: Office) -> dict[str, Item]:
    return {item.tag: item for item, _ in pieces(office)}


def test_a_hundred_pieces_take_no_more_questions_than_one(sample: Office) -> None:
    asked: list[str] = []

    def note(_: object, __: object, statement: str, *___: object) -> None:
        asked.append(statement)

    counts = []
    wanted = pieces(sample)
    changed = [one for one in wanted if one[0].tag == "DM-06"]  # what was changed of a piece takes one more
    for some in (changed, wanted):
        event.listen(sample.book._engine, "before_cursor_execute", note)
        together(sample, some, sample.today)
        event.remove(sample.book._engine, "before_cursor_execute", note)
        counts.append(len(asked))
        asked.clear()
    assert len(wanted) > 100 and counts[0] == counts[1] < 19


def test_no_piece_and_an_unknown_tag_are_answered_with_nothing(sample: Office) -> None:
    assert together(sample, [], sample.today) == ()
    with sample.book.reading() as page:
        found = page.items(["ZZ-1", " sh-01", "SH-01"])
    assert {asked: item.tag for asked, item in found.items()} == {" sh-01": "SH-01", "SH-01": "SH-01"}

"""A member goes round the program: what the server holds him to, row by row. What it lets through is tried as well."""

import json
from collections.abc import Callable, Iterator
from contextlib import suppress
from datetime import date
from typing import Any

import pytest
from sqlalchemy import Connection, Table, func, insert, select, text, update
from sqlalchemy.exc import DBAPIError

from inspector.register.canonical import digest
from inspector.register.chains import hash_of, line_hash
from inspector.register.ledger import Deed, Wrote, add_line, head
from inspector.register.tables import club_setting, inspection, item, ledger, opinion, standing, verdict
from inspector.register.year_tables import attachment, attachment_data, piece_call, recall, recall_entry
from tests.branches.federation import Federation
from tests.conftest import EVENING

Row = dict[str, Any]
DAY = date(2026, 11, 25)


@pytest.fixture
def member(federation: Federation) -> Iterator[Connection]:
    """A bare connection of a member's; nothing is kept unless a test commits."""
    engine = federation.engine("kite_member")
    with engine.connect() as made:
        yield made
        with suppress(DBAPIError):
            made.rollback()
    engine.dispose()


def stood(connection: Connection, outcome: str) -> tuple[Row, Row]:
    """What stands of a piece with this outcome, and its verdict."""
    found = connection.execute(select(standing).where(standing.c.outcome == outcome)).mappings().first()
    assert found is not None
    given = connection.execute(select(verdict).where(verdict.c.id == found["verdict_id"])).mappings().one()
    return dict(found), dict(given)


def given(before: Row, **changed: object) -> Row:
    """Another verdict as the one before, but for these facts of its body."""
    body = {**json.loads(before["body"]), **changed}
    known = {"outcome": body["outcome"], "rulebook_id": body["rulebook"], "body": json.dumps(body)}
    return {**before, "id": "a-members-own", **known}


def of_piece(row: Row) -> Any:
    """The change of what stands of a piece."""
    return update(standing).where(standing.c.item_id == row["item_id"])


def taken(connection: Connection, table: Table, row: Row) -> None:
    """The server takes this row; it is not kept."""
    sought = select(table.c.id).where(table.c.id == row["id"])
    with connection.begin_nested() as tried:
        connection.execute(insert(table), row)
        assert connection.execute(sought).scalars().all() == [row["id"]]
        tried.rollback()
    assert connection.execute(sought).first() is None


def refused(connection: Connection, statement: Any, row: Row, why: str = "") -> None:
    """The server does not take it, for this reason."""
    with pytest.raises(DBAPIError, match=why or "row-level security"), connection.begin_nested():
        connection.execute(statement, row)


# --- verdicts ---


@pytest.mark.parametrize(
    ("stands", "changed"),
    [
        ("hold", {"outcome": "fit"}),
        ("hold", {"outcome": "derate"}),
        ("retire", {"outcome": "hold"}),
        ("fit", {"outcome": "perfect"}),
        ("fit", {"next_inspection_due": "2099-01-01"}),
        ("fit", {"next_inspection_due": None, "wall": None}),
        ("fit", {"capacity": {"now_n": 1e9}}),
        ("fit", {"by_purpose": []}),
        ("fit", {"rulebook": "another"}),
        ("fit", {"item_id": "another"}),
        ("fit", {"on": "2020-01-01"}),
    ],
)
def test_no_verdict_of_a_members_is_milder(member: Connection, stands: str, changed: Row) -> None:
    _, before = stood(member, stands)
    refused(member, insert(verdict), given(before, **changed), "may only make a verdict stricter")


def purposes_of(row: Any) -> list[Row]:
    """The outcome for each purpose."""
    return list(json.loads(row["body"])["by_purpose"])


def test_a_purpose_does_not_come_out_milder_either(member: Connection) -> None:
    stands = member.execute(select(verdict).join(standing, standing.c.verdict_id == verdict.c.id)).mappings().all()
    parted = [one for one in stands if {"hold", "fit"} <= {two["outcome"] for two in purposes_of(one)}]
    assert parted, "no piece of the sample is fit for one purpose and held for another"
    before = dict(parted[0])
    purposes = purposes_of(before)
    milder = [{**one, "outcome": "fit"} for one in purposes]
    refused(member, insert(verdict), given(before, by_purpose=milder), "stricter")


def test_a_stricter_verdict_is_taken_and_so_is_the_same(member: Connection) -> None:
    _, before = stood(member, "fit")
    told_late = {"outcome": "retire", "next_inspection_due": None, "capacity": {"now_n": 1e9}}
    for changed in ({}, {"outcome": "hold"}, told_late):
        taken(member, verdict, given(before, **changed))


@pytest.mark.parametrize(
    "changed",
    [
        {"outcome": "fit"},
        {"headline": "All is well"},
        {"tag": "SH-999"},
        {"search": "nothing that anybody finds"},
        {"owner": "Somebody else"},
        {"next_due": date(2099, 1, 1)},
        {"holds_until": date(2099, 1, 1)},
        {"inspected_on": DAY},
    ],
)
def test_what_stands_says_what_its_verdict_says(member: Connection, changed: Row) -> None:
    before, _ = stood(member, "hold")
    refused(member, of_piece(before), changed, "what its last verdict says")


def test_nothing_stands_by_an_older_milder_verdict(member: Connection) -> None:
    before, _ = stood(member, "hold")
    other, _ = stood(member, "fit")
    changed = {
        key: other[key] for key in ("verdict_id", "outcome", "headline", "next_due", "holds_until", "unloosened")
    }
    refused(member, of_piece(before), changed, "what its last verdict says")


# --- checks, doubts, files ---


def a_check(connection: Connection, **changed: object) -> Row:
    """A check before use of some piece, but for these facts."""
    key = connection.execute(select(item.c.id)).scalars().first()
    body = {"kind": "before_use", "competent": False, "vouched": False, "on": "2026-11-25", **changed}
    return {"id": "a-members-own", "item_id": key, "day": DAY, "body": json.dumps(body)}


@pytest.mark.parametrize("changed", [{"kind": "periodic"}, {"competent": True}, {"vouched": True}])
def test_a_member_keeps_no_inspection_but_a_check_before_use(member: Connection, changed: Row) -> None:
    refused(member, insert(inspection), a_check(member, **changed))
    taken(member, inspection, a_check(member))


def test_a_member_doubts_and_answers_nothing(member: Connection) -> None:
    row = a_check(member)
    refused(member, insert(opinion), {**row, "body": '{"stance": "answers"}'})
    taken(member, opinion, {**row, "body": '{"stance": "doubts"}'})


def test_a_member_puts_files_to_trips_alone_and_under_their_own_hash(member: Connection) -> None:
    data = member.execute(select(attachment_data.c.id)).scalars().first()
    about = a_check(member)["item_id"]
    refused(member, insert(attachment), {"id": "x", "about": about, "day": DAY, "data_id": data, "body": "{}"})
    refused(member, insert(attachment_data), {"id": "0" * 64, "data": b"anything"})


def test_a_member_takes_no_recall_back(member: Connection) -> None:
    key = member.execute(select(recall.c.id)).scalars().first()
    assert key, "the sample has a recall"
    body = '{"kind": "withdrawn", "text": "x"}'
    row = {"id": "a-members-own", "recall_id": key, "day": DAY, "body": body}
    refused(member, insert(recall_entry), row, "permission denied|row-level security")
    called = {**a_check(member), "body": '{"recall": "N-1", "step": "withdrawn"}'}
    refused(member, insert(piece_call), called, "permission denied|row-level security")


# --- the ledger ---


def next_line(connection: Connection) -> Row:
    """A line that follows from the last one, as the program would write it."""
    last = connection.execute(select(ledger).order_by(ledger.c.id.desc()).limit(1)).mappings().one()
    origin = connection.execute(select(club_setting.c.value).where(club_setting.c.key == "origin")).scalar_one()
    body = '{"facts":{"said":"a \\"quote\\", a \\\\, a tab\\t, ü, 李, \\u0001"},"rows":[]}'
    row = {"id": last["id"] + 1, "number": last["number"] + 1, "origin": origin, "at": EVENING.isoformat(), "by": "x"}
    row |= {"deed": "inspect", "body": body, "before": last["hash"]}
    return {**row, "hash": hash_of(row)}


CHANGES: dict[str, Callable[[Row], Row]] = {
    "a gap": lambda row: {**row, "id": row["id"] + 7},
    "a wrong number": lambda row: {**row, "number": row["number"] + 1},
    "another copy's origin": lambda row: {**row, "origin": "XXXX"},
    "another line before": lambda row: {**row, "before": "0" * 64},
    "another body": lambda row: {**row, "body": "{}"},
}


@pytest.mark.parametrize("what", CHANGES)
def test_a_line_follows_from_the_last_one(member: Connection, what: str) -> None:
    wrong = CHANGES[what](next_line(member))
    if what != "another body":
        wrong["hash"] = hash_of(wrong)
    refused(member, insert(ledger), wrong, "must follow from the last one")


def test_a_line_tells_a_members_deed(member: Connection) -> None:
    wrong = {**next_line(member), "deed": "strike"}
    refused(member, insert(ledger), {**wrong, "hash": hash_of(wrong)})
    taken(member, ledger, next_line(member))


def test_the_server_takes_the_hash_of_every_line_as_the_program_does(member: Connection) -> None:
    other = select(func.count()).select_from(ledger).where(text("line_hash(ledger) <> hash"))
    assert member.execute(other).scalar_one() == 0
    assert member.execute(select(func.count()).select_from(ledger)).scalar_one() > 1000
    nasty = "".join(map(chr, range(1, 0x180))) + "\u2028\u2029\ufeff\U0001f6de"
    columns = (7, "ABCD", EVENING.isoformat(), "x", "a \\ b", nasty, "0" * 64)
    names = ("number", "origin", "at", "by", "deed", "body", "before")
    line = {"branch": "kite", "id": 7, "hash": "", **dict(zip(names, columns, strict=True))}
    asked = text("SELECT line_hash(jsonb_populate_record(NULL::ledger, CAST(:line AS jsonb)))")
    assert member.execute(asked, {"line": json.dumps(line)}).scalar_one() == line_hash(*columns)


def test_a_row_that_no_line_names_is_not_kept(member: Connection) -> None:
    member.execute(insert(inspection), a_check(member))
    with pytest.raises(DBAPIError, match="must name every row"):
        member.commit()


def test_a_row_that_a_line_names_is_kept(member: Connection) -> None:
    row = {**a_check(member), "id": "a-named-one"}
    member.execute(insert(inspection), row)
    origin = member.execute(select(club_setting.c.value).where(club_setting.c.key == "origin")).scalar_one()
    add_line(member, Deed("inspect", "x", EVENING, {}, str(origin)), [Wrote("inspection", row["id"], digest(row))])
    member.exec_driver_sql("SET CONSTRAINTS ALL IMMEDIATE")  # what the end of the transaction would ask
    assert head(member)[0] > 1000

"""Every row of the history as a line of JSON: all of it, as the schema says, and as the ledger's digests prove."""

import hashlib
import json
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import msgspec
import pytest
from jsonschema import Draft202012Validator
from msgspec import Struct
from sqlalchemy import create_engine, func, select

from inspector.duties.keep_contact import write_contact
from inspector.gear.verdict import Explanation, Verdict
from inspector.register.book import open_book
from inspector.register.canonical import canonical
from inspector.register.exchange.json_lines import AS_JSON
from inspector.register.exchange.line_schema import BODIES, SCHEMA_FILE, line_schema, schema_text, shipped_schema
from inspector.register.tables import APPEND_ONLY
from inspector.rulebook.load import Rulebook
from tests.conftest import seated_copy

MAIL = "nobody@example.org"
RENEW = (
    "python -c 'from pathlib import Path; from inspector.register.exchange.line_schema import *; "
    f'Path("inspector/register/exchange/{SCHEMA_FILE}").write_text(schema_text())\''
)


class Line(Struct):
    """A line with its columns as they are spelt in it."""

    table: str
    row: dict[str, msgspec.Raw]


@pytest.fixture(scope="module")
def file(sample_once: Path, tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Path:
    """The file of a sample register with a contact that must be in no line; it is only read."""
    office = seated_copy(sample_once, tmp_path_factory.mktemp("lines"), rules)
    write_contact(office, office.officer.name, mail=MAIL)
    office.book.close()
    return office.out_tray.parent / "register.db"


@pytest.fixture(scope="module")
def lines(file: Path) -> tuple[bytes, ...]:
    """The lines of that register."""
    book = open_book(file)
    with book.reading() as page:
        told = tuple(page.json_lines())
    book.close()
    return told


def test_there_is_a_line_for_every_row_of_every_table_that_only_grows(file: Path, lines: tuple[bytes, ...]) -> None:
    counted = Counter(json.loads(one)["table"] for one in lines)
    engine = create_engine(f"sqlite:///{file}")
    with engine.connect() as connection:
        there = {
            one.name: connection.execute(select(func.count()).select_from(one)).scalar_one() for one in APPEND_ONLY
        }
    engine.dispose()
    assert counted == {name: count for name, count in there.items() if count}
    assert len(counted) > 20, "the sample has rows of most sorts"


def test_contact_details_passphrases_and_settings_are_in_no_line(lines: tuple[bytes, ...]) -> None:
    assert not any(MAIL.encode() in one for one in lines)
    assert {json.loads(one)["table"] for one in lines}.isdisjoint({"contact", "passphrase", "club_setting", "standing"})


def test_every_line_is_as_the_schema_says(lines: tuple[bytes, ...]) -> None:
    """By the schema of its own table; of the verdicts, by far the longest, each by the shape that the schema is made
    from, and some by the schema itself."""
    schema = line_schema()
    Draft202012Validator.check_schema(schema)
    of: dict[str, Draft202012Validator] = {}
    seen: Counter[str] = Counter()
    for one in map(json.loads, lines):
        name = one["table"]
        own = {"$defs": schema["$defs"], "$ref": f"#/$defs/row_of_{name}"}
        check = of.setdefault(name, Draft202012Validator(own, format_checker=Draft202012Validator.FORMAT_CHECKER))
        seen[name] += 1
        if name == "verdict":
            msgspec.convert(one["row"]["body"], Verdict)
            msgspec.convert(one["row"]["words"], Explanation)
        if name != "verdict" or seen[name] % 50 == 1:
            assert not list(check.iter_errors(one["row"])), (name, one["row"].get("id"))


def test_the_whole_schema_tells_the_tables_apart(lines: tuple[bytes, ...]) -> None:
    check = Draft202012Validator(line_schema())
    firsts = {json.loads(one)["table"]: json.loads(one) for one in reversed(lines)}
    for one in firsts.values():
        assert check.is_valid(one)
        assert not check.is_valid({**one, "table": "unheard_of"})
        assert not check.is_valid({**one, "row": {**one["row"], "more": 1}})
        assert not check.is_valid({**one, "row": {key: value for key, value in one["row"].items() if key != "id"}})


def test_the_digests_of_the_ledger_are_reckoned_from_the_lines_alone(lines: tuple[bytes, ...]) -> None:
    named = dict(_named(lines))
    reckoned = {}
    for one in (msgspec.json.decode(line, type=Line) for line in lines):
        if one.table not in {"ledger", "attachment_data"}:
            columns = {key: _column(key, bytes(raw)) for key, raw in one.row.items()}
            reckoned[one.table, str(columns["id"])] = hashlib.sha256(canonical(columns).encode()).hexdigest()
    assert reckoned and reckoned == {key: own for key, own in named.items() if key[0] != "attachment_data"}


def _column(name: str, spelt: bytes) -> Any:
    """A column as the ledger's digest takes it: what holds JSON as its text."""
    return spelt.decode() if name in AS_JSON else json.loads(spelt)


def _named(lines: tuple[bytes, ...]) -> Iterator[tuple[tuple[str, str], str]]:
    for one in (json.loads(line) for line in lines if b'"table":"ledger"' in line[-20:]):
        for table, key, own in one["row"]["body"]["rows"]:
            yield (table, key), own


def test_every_table_has_its_shape_and_the_schema_that_is_shipped_is_that_of_the_program() -> None:
    with_body = {one.name for one in APPEND_ONLY if "body" in one.c}
    assert set(BODIES) == with_body, "name the shape of a new table's body in BODIES of exchange/line_schema.py"
    assert shipped_schema().decode() == schema_text(), f"renew it: {RENEW}"


def test_a_wrong_body_is_found() -> None:
    schema: dict[str, Any] = line_schema()
    check = Draft202012Validator(schema)
    body = {"on": "2026-11-25", "pull_count": 2}
    line = {"table": "piece_use", "row": {"id": "a", "item_id": "b", "day": "2026-11-25", "body": body}}
    assert check.is_valid(line)
    assert not check.is_valid({**line, "row": {**line["row"], "body": {**body, "pull_count": "two"}}})  # type: ignore[dict-item]
    assert not check.is_valid({**line, "row": {**line["row"], "body": {}}})  # type: ignore[dict-item]

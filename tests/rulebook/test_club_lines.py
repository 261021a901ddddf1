"""Lines of tables and keys in a TOML text, in odd layouts, held against what the TOML reader finds."""

import tomli
from hypothesis import given
from hypothesis import strategies as st

from inspector.rulebook.club_lines import nth, table_lines
from tests.each import each

ODD = '''# a comment with [[limit]] in it
club = "a \\"quoted\\" # no comment" # a comment
why = """
[[limit]]
rule = "in a text"
ends with a quote""""
profile = [
    "one", # ] in a comment
    'two',
]
   [[ limit ]]   # odd spacing
  "rule"   =   'first'
limit = \'\'\'8 %\'\'\'

[["limit"]]
limit = "9 %"
rule = "second"
other.deep = 1
[limit.inner]
rule = "not the table's own"
[[setting]]
key = "k"
[[limit]]
rule = "third"'''


def test_tables_and_keys_in_odd_layouts() -> None:
    assert tomli.loads(ODD)["limit"][2]["rule"] == "third", "the reader of TOML takes it"
    tables = table_lines(ODD)
    assert tables[0].keys == {"club": 2, "why": 3, "profile": 7}
    first, second, third = (nth(tables, "limit", number) for number in range(3))
    assert first and second and third and nth(tables, "limit", 3) is None
    assert (first.line, first.keys) == (11, {"rule": 12, "limit": 13})
    assert (second.line, second.keys) == (15, {"limit": 16, "rule": 17, "other": 18})
    assert (third.line, third.line_of("rule"), third.line_of("limit")) == (23, 24, 23)


def test_an_inline_list_of_tables_has_no_lines_of_its_own() -> None:
    tables = table_lines('limit = [{rule = "a", limit = "1 %"}]\nclub = "c"')
    assert nth(tables, "limit", 0) is None
    assert tables[0].keys == {"limit": 1, "club": 2}


FILLERS = ["", "# [[limit]]", "   ", "# rule = 'x'", '\t# """']
VALUES = ['"8 %"', "'8 %'", '"""8 %"""', "'''\n8 %'''", '"""\n[[limit]]\n8 %"""', '"a # b"', '"]"', '"\\""']
HEADERS = ["[[limit]]", "[[ limit ]]", '[["limit"]]', "  [[limit]] # note"]


@given(st.data())
def test_every_written_key_is_found_on_its_line(data: st.DataObject) -> None:
    end = data.draw(st.sampled_from(["\n", "\r\n"]))
    lines: list[str] = []
    wanted = []
    for _ in range(data.draw(st.integers(1, 5))):
        lines += data.draw(st.lists(st.sampled_from(FILLERS), max_size=3))
        lines.append(data.draw(st.sampled_from(HEADERS)))
        places = {"": len(lines)}
        for key in data.draw(st.permutations(["rule", "limit", "why"])):
            lines += data.draw(st.lists(st.sampled_from(FILLERS), max_size=2))
            value = data.draw(st.sampled_from(VALUES))
            lines += f"{key} = {value}".split("\n")
            places[key] = len(lines) - value.count("\n")
        wanted.append(places)
    text = end.join(lines)
    assert len(tomli.loads(text)["limit"]) == len(wanted)
    tables = table_lines(text.replace("\r\n", "\n"))
    for number, places in enumerate(wanted):
        found = nth(tables, "limit", number)
        assert found is not None
        assert {"": found.line, **found.keys} == places


@each("text", ["", "[", "[[", "a", "a =", '"', '"""', "= 3", "[[limit]", "a = [", "'", "a = '''"])
def test_no_text_stops_the_line_finder(text: str) -> None:
    assert table_lines(text)[0].name == ""

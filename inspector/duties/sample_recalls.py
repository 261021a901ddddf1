"""The recalls of the sample register: a maker's notice, the letters, and the answers that came in so far."""

from collections.abc import Iterator

from inspector.duties.call_in import call_in
from inspector.duties.office import Office
from inspector.duties.print_recall import enter_recall_letters
from inspector.duties.recall_answers import close_recall, note_answer
from inspector.duties.sample_texts import Sample, listed_tables
from inspector.duties.sample_trips import Deed, Do, Turn
from inspector.duties.settle_recall import ReadOnIt, not_of_it
from inspector.gear.recall_notice import Answer, Issuer, Meant, NewRecall

_Table = dict[str, object]


def recall_deeds(sample: Sample) -> Iterator[Deed]:
    """Each notice, and what was added to it later. The register numbers them as they were entered."""
    for number, table in enumerate(listed_tables(sample.tables("recalls.toml"), "recall")):
        yield Deed(sample.day(str(table["entered"])), Turn.WRITTEN, _entering(sample, table))
        for entry in listed_tables(table, "later"):
            yield Deed(sample.day(str(entry["day"])), Turn.WRITTEN, _adding(number, entry))


def _entering(sample: Sample, table: _Table) -> Do:
    said = {key: str(table.get(key, "")) for key in ("mark", "first", "last", "reason", "remedy", "source", "by")}
    meant = Meant(
        said["mark"], _texts(table, "kinds"), _texts(table, "batches"), said["first"], said["last"],
        tags=_texts(table, "tags"),
    )  # fmt: skip
    issued = sample.day(str(table["issued"])) if "issued" in table else None

    def enter(office: Office) -> object:
        told = NewRecall(
            office.today, Issuer(str(table["issuer"])), meant, said["reason"], said["remedy"], said["source"], issued,
            said["by"],
        )  # fmt: skip
        return call_in(office, told)

    return enter


def _adding(number: int, entry: _Table) -> Do:
    text, name = str(entry.get("text", "")), str(entry.get("name", ""))
    about, by = _texts(entry, "about"), str(entry.get("by", ""))
    read, answer = ReadOnIt(str(entry.get("serial", ""))), str(entry.get("answer", ""))
    said: dict[str, Do] = {
        "letters": lambda office: enter_recall_letters(
            office, _ref(office, number), send_to=str(entry.get("send_to", ""))
        ),
        "answer": lambda office: note_answer(office, _ref(office, number), about, name, Answer(answer), text),
        "not_of_it": lambda office: not_of_it(office, _ref(office, number), about[0], read, by=by),
        "closed": lambda office: close_recall(office, _ref(office, number), text),
    }
    return said[str(entry["what"])]


def _ref(office: Office, number: int) -> str:
    """What the register calls the recall; it carries the name of this copy, which no text can know."""
    with office.book.reading() as page:
        return page.recalls()[number].ref


def _texts(table: _Table, key: str) -> tuple[str, ...]:
    value = table.get(key, [])
    return tuple(map(str, value)) if isinstance(value, list) else ()

"""The officer's year of the sample register: guests, work, changes, comings and goings, people, counts, bad days."""

from collections.abc import Iterator, Mapping

from inspector.duties import sample_texts
from inspector.duties.book_in import book_in
from inspector.duties.change_item import change_owner, change_value, retag
from inspector.duties.change_person import Widening, change_person, give_competence
from inspector.duties.close_count import close_count
from inspector.duties.evidence_paper import enter_evidence
from inspector.duties.incident_checks import typed_distance
from inspector.duties.keep_incident import add_custody, add_statement, close_incident, hold_more
from inspector.duties.office import Office
from inspector.duties.print_voucher import enter_voucher
from inspector.duties.release_evidence import release_evidence
from inspector.duties.repair_item import repair_item
from inspector.duties.report_incident import report_incident
from inspector.duties.sample_recalls import recall_deeds
from inspector.duties.sample_texts import Row, Sample, listed_tables
from inspector.duties.sample_trips import Deed, Do, Turn
from inspector.duties.take_stock import begin_count, mark
from inspector.duties.value_gear import read_worth
from inspector.duties.visit import visit
from inspector.duties.whereabouts import hand_to_owner, put_in_store, report_found, report_stolen, sell
from inspector.gear.incident import Gravity, NewIncident
from inspector.gear.kind import Kind
from inspector.gear.person import Competence
from inspector.gear.repair import NewRepair, Work
from inspector.gear.stock_take import Counted

_Table = dict[str, object]


def year_deeds(sample: Sample, kinds: Mapping[str, Kind]) -> Iterator[Deed]:
    """All that belongs to the officer's year, in no order but within a day. kinds: by the tag as booked."""
    for row in sample.rows("guests.csv"):
        yield Deed(sample.day(row["booked"]), Turn.BOOKED, _receiving(sample, row, kinds[row["tag"]]))
    for row in sample.rows("repairs.csv"):
        yield _written(sample, row, _repairing(sample, row, kinds[row["tag"]]))
    for row in sample.rows("changes.csv"):
        yield _written(sample, row, _changing(row))
    for row in sample.rows("whereabouts.csv"):
        yield _written(sample, row, _moving(row))
    for row in sample.rows("people.csv"):
        yield _written(sample, row, _promoting(sample, row))
    for row in sample.rows("counts.csv"):
        yield _written(sample, row, _counting(row))
    yield from _incidents(sample)
    yield from recall_deeds(sample)


def _written(sample: Sample, row: Row, do: Do) -> Deed:
    return Deed(sample.day(row["day"]), Turn.WRITTEN, do)


def _receiving(sample: Sample, row: Row, kind: Kind) -> Do:
    """Somebody else's piece: along on one trip where one is named, else borrowed."""
    if row["trip"]:
        return lambda office: visit(office, row["trip"], sample_texts.piece(sample, row, kind))
    return lambda office: book_in(office, sample_texts.piece(sample, row, kind))


def _repairing(sample: Sample, row: Row, kind: Kind) -> Do:
    done = NewRepair(
        on=sample.day(row["done"]),
        work=Work(row["work"]),
        done_by=row["done_by"],
        by=row["by"],
        part=row["part"],
        note=row["note"],
        maker=row["maker"],
        own=row["own"] == "yes",
        sizes=sample_texts.sizes(row, kind),
    )
    return lambda office: repair_item(office, row["tag"], done)


def _changing(row: Row) -> Do:
    """What a piece was booked with, written down anew."""
    tag, to, why, by = row["tag"], row["to"], row["why"], row["by"]
    said: dict[str, Do] = {
        "tag": lambda office: retag(office, tag, to, why, by),
        "owner": lambda office: change_owner(office, tag, to, why, by, row["second"]),
        "value": lambda office: change_value(office, tag, read_worth(to), why, by),
    }
    return said[row["what"]]


def _moving(row: Row) -> Do:
    """A piece that was stolen, is here again, is put away, or leaves for good, with its voucher."""
    tag, at, why = row["tag"], row["at"], row["why"]
    said: dict[str, Do] = {
        "stolen": lambda office: report_stolen(office, tag, at, row["paper"], why=why),
        "found": lambda office: report_found(office, tag, at, why=why),
        "placed": lambda office: put_in_store(office, tag, at, why=why),
        "sold": lambda office: (sell(office, tag, at, why=why), enter_voucher(office, tag)),
        "handed back": lambda office: (hand_to_owner(office, tag, why=why), enter_voucher(office, tag)),
    }
    return said[row["what"]]


def _promoting(sample: Sample, row: Row) -> Do:
    """Another role for a person, or a competence that is given from that day on."""
    if row["what"] == "role":
        return lambda office: change_person(office, row["who"], role=row["to"], why=row["why"])
    given = Competence(row["to"], sample.day(row["day"]), sample.maybe_day(row["until"]))
    ground = Widening(row["why"], paper=row["paper"])
    return lambda office: give_competence(office, row["who"], given, ground)


def _counting(row: Row) -> Do:
    """A count begun, pieces marked in it, or its close."""
    ref, place = row["count"], row["place"]
    if row["what"] == "begin":
        return lambda office: begin_count(office, ref, place)
    if row["what"] == "close":
        return lambda office: close_count(office, ref)
    return lambda office: mark(office, ref, sample_texts.tags(row), Counted(row["what"]), place, row["note"])


def _incidents(sample: Sample) -> Iterator[Deed]:
    """Each report, and what was added to it later. The register numbers them in the order of their reports."""
    for number, table in enumerate(listed_tables(sample.tables("incidents.toml"), "incident")):
        yield Deed(sample.day(str(table["reported"])), Turn.WRITTEN, _reporting(sample, table))
        for entry in listed_tables(table, "later"):
            yield Deed(sample.day(str(entry["day"])), Turn.WRITTEN, _adding(number, entry))


def _reporting(sample: Sample, table: _Table) -> Do:
    told = NewIncident(
        on=sample.day(str(table["happened"])),
        gravity=Gravity(str(table["gravity"])),
        place=str(table["place"]),
        what=str(table["what"]),
        pieces=_names(table, "pieces"),
        witnesses=_names(table, "witnesses"),
        distances=tuple(typed_distance(one.split("; "), ".") for one in _names(table, "distances")),
        by=str(table["by"]),
        broken=_names(table, "broken"),
    )
    return lambda office: report_incident(office, told)


def _adding(number: int, entry: _Table) -> Do:
    about, text, by = (str(entry.get(key, "")) for key in ("about", "text", "by"))
    second, holder = str(entry.get("second", "")), str(entry.get("holder", ""))
    said: dict[str, Do] = {
        "statement": lambda office: add_statement(office, _ref(office, number), about, text, by),
        "held": lambda office: hold_more(office, _ref(office, number), about, text, by),
        "custody": lambda office: add_custody(office, _ref(office, number), about, holder, text, by),
        "listed": lambda office: enter_evidence(office, _ref(office, number)),
        "released": lambda office: release_evidence(
            office, _ref(office, number), about, second=second, why=text, by=by
        ),
        "closed": lambda office: close_incident(office, _ref(office, number), text, by),
    }
    return said[str(entry["what"])]


def _ref(office: Office, number: int) -> str:
    """What the register calls the report; it carries the name of this copy, which no text can know."""
    with office.book.reading() as page:
        return page.incidents()[number].ref


def _names(table: _Table, key: str) -> tuple[str, ...]:
    value = table.get(key, [])
    return tuple(map(str, value)) if isinstance(value, list) else ()

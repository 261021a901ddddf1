"""Letters to those who have pieces or own them: what they have, what falls due, what to bring when and where."""

from datetime import date

from msgspec import Struct

from inspector.duties.due_days import is_lost
from inspector.duties.judge_anew import judge_anew
from inspector.duties.letter_words import Asking, asking, has_it, is_asked_for, letter_lines, letter_piece
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.plain_lines import check_line
from inspector.duties.what_falls_due import Held, held, last_day, what_falls_due
from inspector.duties.who import person_of
from inspector.gear.falls_due import Due, DueLine
from inspector.gear.letters import HolderLetter
from inspector.gear.person import Person
from inspector.language import show_day, tr
from inspector.paper.holder_letter import holder_letter
from inspector.paper.page_style import PageSize
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.rows import from_body

LETTER = "letter"  # what the register calls letters and sheets of slips: they share one row of numbers


def print_letters(
    office: Office, name: str = "", *, until: date | None = None, bring_to: str = "", bring_by: date | None = None
) -> tuple[Paper, ...]:
    """Number, keep and print the letter to a person, or to everybody of whose pieces anything is asked."""
    made = enter_letters(office, name, until=until, bring_to=bring_to, bring_by=bring_by)
    return tuple(_printed(office, one) for one in made)


def print_again(office: Office, name: str = "") -> tuple[Paper, ...]:
    """Print the last letter to a person, or to everybody, as it was kept; the address is the one written down now."""
    with office.book.reading() as page:
        people = (person_of(page, name, tr("person")),) if name else page.people()
        kept = [found for one in people if (found := page.latest_document(LETTER, one.id))]
    if not kept:
        raise Refused(tr("letter"), tr("No such letter was printed yet."), tr("Print it for the first time."))
    return tuple(_printed(office, from_body(body, HolderLetter)) for _, body in kept)


def _printed(office: Office, letter: HolderLetter) -> Paper:
    """An address is looked up as the letter is printed and is kept nowhere with it."""
    with office.book.reading() as page:
        contact = page.contact(letter.person)
    address = contact.address if contact else ""
    return put_out(office, letter.imprint.number, holder_letter(letter, address, PageSize(office.page)))


def enter_letters(
    office: Office, name: str = "", *, until: date | None = None, bring_to: str = "", bring_by: date | None = None
) -> tuple[HolderLetter, ...]:
    """Number and keep the letters; no file is written."""
    last, bring = last_day(office, until), check_bring(office, bring_to, bring_by)
    judge_anew(office)  # no letter may say what time alone has ended
    others = tuple(one for one in what_falls_due(office, last) if one.what is Due.COMPETENCE)
    with office.book.page() as page:
        pieces = tuple(held(office, page))
        ask = asking(page, pieces, office.today, last, bring_by)
        post = _Post(office, page, pieces, ask, others, show_day(last), bring)
        people = (person_of(page, name, tr("person")),) if name else page.people()
        made = [letter for one in people if (letter := post.letter(one, wanted=bool(name)))]
        if not made:
            why = tr("{name} has no piece and owns none.", name=name) if name else tr("Nothing is asked of anybody.")
            raise Refused(tr("letter"), why, tr("No letter is needed."))
        facts = {"numbers": [one.imprint.number for one in made], "people": [one.person for one in made]}
        page.enter("print letters", by=office.officer.id, at=office.now, facts=facts)
    return tuple(made)


def check_bring(office: Office, to: str, by: date | None) -> tuple[str, str]:
    """Place and day in words; a day that is past, or a place of several lines, is refused."""
    check_line(tr("bring to"), to)
    if by and by < office.today:
        raise Refused(tr("bring by"), tr("{day} is past.", day=show_day(by)), tr("Write a day from today on."))
    return to.strip(), show_day(by) if by else ""


class _Post(Struct, frozen=True):
    """What is read once for all letters of one deed."""

    office: Office
    page: Page
    pieces: tuple[Held, ...]
    ask: Asking
    others: tuple[DueLine, ...]
    until: str
    bring: tuple[str, str]

    def letter(self, reader: Person, *, wanted: bool) -> HolderLetter | None:
        """The letter to one person, numbered and kept; None for one who has nothing, or of whom nothing is asked.

        wanted: it was asked for by name, and is written also where nothing is to be done.
        """
        own = tuple(one for one in self.pieces if reader in one.people)
        bring = tuple(one.item.tag for one in own if self._brings(one, reader))
        asked = bring or any(is_lost(one.where) or one.kept_by for one in own)
        if not own or not (wanted or asked):
            return None
        number = next_number(self.page, "L", LETTER)
        letter = self._written(reader, own, bring, number)
        self.page.add_document(number, LETTER, self.office.today, reader.id, letter)
        return letter

    def _brings(self, one: Held, reader: Person) -> bool:
        return is_asked_for(one, self.ask) and has_it(one, reader)

    def _written(self, reader: Person, own: tuple[Held, ...], bring: tuple[str, ...], number: str) -> HolderLetter:
        today = self.office.today
        pieces = (letter_piece(one, reader, self.ask) for one in own)
        return HolderLetter(
            imprint=imprint(self.office, self.page, tr("Gear in your hands"), number),
            person=reader.id,
            name=reader.name,
            until=self.until,
            bring=bring,
            bring_to=self.bring[0],
            bring_by=self.bring[1],
            pieces=tuple(sorted(pieces, key=lambda one: one.may_use)),
            others=letter_lines(tuple(one for one in self.others if reader.name in one.people), today),
        )

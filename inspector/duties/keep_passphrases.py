"""Who is at the desk: the club's wish for passphrases, and everybody's own.

Nobody takes over another's name in silence: a passphrase is changed only by whoever gave the old one at the desk, or
anew by another competent person (or the officer) who gave his own. The very first one is taken as stated.
"""

from collections.abc import Iterator
from datetime import date

from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.who import names_count, owns, person_of, seconds_prove
from inspector.gear.inspection import InspectionKind, NewInspection
from inspector.gear.item import Item
from inspector.gear.person import Passphrases, Person
from inspector.gear.seats import Role
from inspector.language import tr, within
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.passphrases import hashed, matches

SETTING = "passphrases"
_SHORTEST = 12
_LEAST_HOLDERS = 2  # where one forgets his, the other can help


def wish(page: Page) -> Passphrases:
    """What the club wants."""
    return Passphrases(page.setting(SETTING, Passphrases.OFF.value))


def is_asked(office: Office) -> bool:
    """Whether the person at the desk has a passphrase and the club wants it; a login that passes nothing needs none."""
    if office.book.role is not Role.OFFICER:
        return False
    with office.book.reading() as page:
        return wish(page) is not Passphrases.OFF and bool(page.passphrase(office.officer.id))


def vouch(office: Office, passphrase: str) -> Office:
    """The office with the person at the desk vouched for. Without a passphrase the name stays as stated."""
    if not passphrase or not is_asked(office):
        return office
    with office.book.reading() as page:
        kept = page.passphrase(office.officer.id)
    what = tr("Type it again; or leave it empty, and the name stands on documents as stated.")
    _check_matches(kept, passphrase, office.officer, (tr("passphrase"), what))
    return replace(office, vouched=True)


def seconds_asked(office: Office) -> bool:
    """Whether second names are asked for their passphrases here."""
    with office.book.reading() as page:
        return seconds_prove(office, page)


def second_asked(office: Office, who: str) -> Person | None:
    """The second person of a deed, where a passphrase is to be asked of him: he has one and the club requires it.

    who: id or name; nobody where it is empty.
    """
    with office.book.reading() as page:
        if not who or not seconds_prove(office, page):
            return None
        person = person_of(page, who, tr("second name"))
        has_one = person.id in page.passphrase_holders()
    return person if has_one and person.id != office.officer.id else None


def vouch_second(office: Office, who: str, passphrase: str) -> Office:
    """The office for one deed, with its second person vouched for as well, where that is asked.

    Without a passphrase the name stays as stated, and the deed refuses it where the club requires one.
    """
    person = second_asked(office, who)
    if person is None or not passphrase:
        return office
    with office.book.reading() as page:
        kept = page.passphrase(person.id)
    what = tr("Let {name} type it again.", name=person.name)
    _check_matches(kept, passphrase, person, (tr("passphrase of the second name"), what))
    return replace(office, vouched_second=person.id)


def _check_matches(kept: str, passphrase: str, person: Person, told: tuple[str, str]) -> None:
    """Refuse another passphrase than the one that is kept. told: the field, and what to do."""
    if not matches(kept, passphrase):
        raise Refused(told[0], tr("It is not that of {name}.", name=person.name), told[1])


def passes_nothing(office: Office, tag: str, facts: NewInspection) -> tuple[str, ...]:
    """What is to be told of an inspection that passes nothing: a name that is only stated, nobody competent, one's own
    gear without a second name. A check before use never passes anything, and nothing is told of it."""
    if facts.kind is InspectionKind.BEFORE_USE:
        return ()
    with office.book.reading() as page:
        named = [person_of(page, one, tr("inspected by")) for one in (facts.by, facts.second) if one]
        stated = [one.name for one in named if not names_count(office, page, one)]
        item = page.item(tag)
    why = [*_not_of_his_own(item, named), *_not_competent(office, item, named, facts.on)]
    if stated:
        why.append(tr("The club requires passphrases, and none was given here for: {names}.", names=", ".join(stated)))
    if not why:
        return ()
    return (*why, tr("The inspection is kept, and every fault in it counts; it passes nothing under that name."))


def _not_of_his_own(item: Item, named: list[Person]) -> Iterator[str]:
    first, *second = named
    if owns(first, item) and not second:
        name = first.name
        yield tr("{name} owns the piece: a second competent person must have looked and be named as well.", name=name)


def _not_competent(office: Office, item: Item, named: list[Person], on: date) -> Iterator[str]:
    """Who may not judge it; of one's own gear both must, else the second name is not asked."""
    kind = office.kind(item.facts.kind)
    for one in named if owns(named[0], item) else named[:1]:
        if not one.is_competent(kind.family, on):
            kind_name = within(kind.name)
            yield tr("On that day {name} is not entered as competent for a {kind}.", name=one.name, kind=kind_name)


def set_wish(office: Office, wanted: Passphrases) -> None:
    """Keep what the club wants. Once there is a passphrase, only who gave his own at the desk may change it."""
    with office.book.page() as page:
        before, holders = wish(page), page.passphrase_holders()
        if wanted is before:
            raise Refused(
                tr("passphrases"), tr("They are “{wish}” already.", wish=before.value), tr("Nothing is to do.")
            )
        if holders and before is not Passphrases.OFF:
            _check_may_help(office, page)
        if wanted is Passphrases.REQUIRED:
            _check_enough(before, len(holders))
        page.set(SETTING, wanted.value)
        page.enter("set passphrase rule", by=office.officer.id, at=office.now, facts={"passphrases": wanted.value})


def set_passphrase(office: Office, who: str, passphrase: str) -> Person:
    """Keep a person's passphrase, new or in the place of one that stands."""
    with office.book.page() as page:
        person = person_of(page, who, tr("person"))
        if wish(page) is Passphrases.OFF:
            why = tr("The club asks for no passphrases.")
            raise Refused(tr("passphrase"), why, tr("Let it want them first: inspector passphrase rule wanted."))
        how = _check_may_set(office, page, person)
        _check_passphrase(person, passphrase)
        page.set_passphrase(person.id, hashed(passphrase))
        page.enter("set passphrase", by=office.officer.id, at=office.now, facts={"id": person.id, "how": how})
    return person


def remove_passphrase(office: Office, who: str) -> Person:
    """Take a person's passphrase out; from then on the name is as stated."""
    with office.book.page() as page:
        person = person_of(page, who, tr("person"))
        if not page.passphrase(person.id):
            raise Refused(tr("passphrase"), tr("{name} has none.", name=person.name), tr("Nothing is to do."))
        if not office.vouches_for(person):
            _check_may_help(office, page)
        if wish(page) is Passphrases.REQUIRED:
            _check_enough(Passphrases.REQUIRED, len(page.passphrase_holders()) - 1)
        page.set_passphrase(person.id, "")
        page.enter("remove passphrase", by=office.officer.id, at=office.now, facts={"id": person.id})
    return person


def _check_may_set(office: Office, page: Page, person: Person) -> str:
    """Whether the one at the desk may set this person's passphrase; in a word, by which right."""
    own = person.id == office.officer.id
    stands, holders = bool(page.passphrase(person.id)), page.passphrase_holders()
    if own and stands and office.vouched:
        return "changed"
    if own and not holders:
        return "first"
    if own:
        why = tr("Whether {name} is at the desk was not shown by a passphrase.", name=person.name)
        what = tr("Give the old one; or let another competent person set it, at the desk with his own.")
        raise Refused(tr("passphrase"), why, what)
    _check_may_help(office, page)
    return "reset" if stands else "given"


def _check_may_help(office: Office, page: Page) -> None:
    """Refuse whoever did not give his own passphrase, or is neither competent for anything nor the club's officer."""
    if not office.vouched:
        why = tr("{name} has not given a passphrase at this desk.", name=office.officer.name)
        raise Refused(tr("passphrase"), why, tr("Let somebody who has one do it, with the passphrase given."))
    helper = person_of(page, office.officer.id, tr("officer"))
    today = office.today
    competent = any(one.since <= today and (one.until is None or today <= one.until) for one in helper.competences)
    if not competent and page.setting("officer") != helper.id:
        why = tr("{name} is neither the equipment officer nor competent for any gear.", name=helper.name)
        raise Refused(tr("officer"), why, tr("Ask somebody who is."))


def check_may_hand_over(office: Office, page: Page) -> None:
    """Where passphrases are required, only who may help others to theirs may make somebody the officer, who may too."""
    if wish(page) is Passphrases.REQUIRED:
        _check_may_help(office, page)


def _check_enough(before: Passphrases, holders: int) -> None:
    if before is Passphrases.OFF:
        why = tr("Nobody can have given one yet.")
        raise Refused(tr("passphrases"), why, tr("Let the club want them first, and let everybody who judges set one."))
    if holders < _LEAST_HOLDERS:
        why = tr("Where they are required, at least {least} people must have one.", least=_LEAST_HOLDERS)
        raise Refused(
            tr("passphrases"), why, tr("Let another competent person set one, who can help where one is lost.")
        )


def _check_passphrase(person: Person, passphrase: str) -> None:
    if len(passphrase.strip()) < _SHORTEST:
        why = tr("It has fewer than {least} signs.", least=_SHORTEST)
        raise Refused(tr("passphrase"), why, tr("Use a few words that only you would put together."))
    if person.name.casefold() in passphrase.casefold():
        raise Refused(tr("passphrase"), tr("Your name is in it."), tr("Use words that nobody would guess."))
    check_line(tr("passphrase"), passphrase)

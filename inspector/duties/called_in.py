"""Who is to be told of pieces that are called in: whoever has one, owns it, owns its vehicle, or bought it."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from inspector.duties.due_days import has_left
from inspector.duties.letter_words import Asking, asking, has_it, must_stay, why_words
from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import where_words
from inspector.duties.what_falls_due import Held, held
from inspector.duties.who import is_clubs, owns
from inspector.gear.item import Item
from inspector.gear.person import Person
from inspector.gear.recall import CalledPiece
from inspector.gear.whereabouts import Where
from inspector.language import tr
from inspector.register.page import Page
from inspector.rulebook.words import marked_words

Reader = tuple[str, str]  # the id, empty for one whom the register knows by name alone, and the name


class Called(Struct, frozen=True):
    """What a call comes to. letters: for each reader the pieces he is told of; unwritten: pieces of which nobody can be
    told by a letter, each with why.
    """

    letters: dict[Reader, tuple[CalledPiece, ...]]
    unwritten: tuple[str, ...]


def called(office: Office, page: Page, items: Iterable[Item], passed_on: Mapping[str, Sequence[str]]) -> Called:
    """Sort the pieces by whom to tell; each piece stands in every letter that it concerns.

    passed_on: by the piece's id, names to whom it was passed on, by what somebody answered.
    """
    wanted = list(items)
    here = {one.item.id: one for one in held(office, page, [one.id for one in wanted])}
    ask = asking(page, here.values(), office.today, office.today, None)
    found: dict[Reader, list[CalledPiece]] = defaultdict(list)
    unwritten = []
    for item in wanted:
        told = list(_told_of(page, here[item.id], ask) if item.id in here else _told_of_left(office, page, item))
        known = {reader for reader, _ in told}
        more = (_passed_on(office, page, item, name) for name in passed_on.get(item.id, ()))
        told += [one for one in more if one[0] not in known]
        for reader, piece in told:
            found[reader].append(piece)
        if not told:
            unwritten.append(_nobody_words(page, item))
    letters = {reader: tuple(pieces) for reader, pieces in sorted(found.items(), key=lambda one: one[0][1])}
    return Called(letters, tuple(unwritten))


def _told_of(page: Page, one: Held, ask: Asking) -> Iterator[tuple[Reader, CalledPiece]]:
    """Everybody of the register whom a piece concerns that the club has; an owner whom it knows by name alone too."""
    for reader in one.people:
        yield (
            (reader.id, reader.name),
            _piece(one.item, one.kind_name, why_words(one, reader), _asked(one, reader, ask)),
        )
    if not is_clubs(page, one.item) and not any(owns(reader, one.item) for reader in page.people()):
        owner = one.item.facts.owner
        said = must_stay(one, ask) or tr("The club has it. You get word of what becomes of it.")
        yield ("", owner), _piece(one.item, one.kind_name, tr("Your own"), said)


def _asked(one: Held, reader: Person, ask: Asking) -> str:
    """To leave it where it is, or to stop using it and send it back."""
    if stays := must_stay(one, ask):
        return stays
    if not has_it(one, reader):
        return tr("It is with somebody else, who is asked for it.")
    if one.where.where is Where.ON_VEHICLE:
        bring = tr("Bring the vehicle {tag}; leave the part on it.", tag=one.where.at)
        return tr("Do not pull or tow with it any more, not even once. {bring}", bring=bring)
    if one.where.where is Where.IN_STORE:
        return tr("Do not use it any more, not even once. Where you have it yourself, send it back.")
    return tr("Do not use it any more, not even once. Send it back.")


def _told_of_left(office: Office, page: Page, item: Item) -> Iterator[tuple[Reader, CalledPiece]]:
    """Whoever bought a piece or got it back; of one that was made unusable there is nobody to be told."""
    where = page.whereabouts_of(item)
    if not has_left(where) or where.where is Where.DESTROYED or not where.at:
        return
    names = {one.id: one.name for one in page.people()}
    why = tr("By the register: {place}", place=where_words(where, names))
    yield _who_has_it(office, page, item, names.get(where.at, where.at), why)


def _passed_on(office: Office, page: Page, item: Item, name: str) -> tuple[Reader, CalledPiece]:
    return _who_has_it(office, page, item, name, tr("By what the club was told it was passed on to you"))


def _who_has_it(office: Office, page: Page, item: Item, name: str, why: str) -> tuple[Reader, CalledPiece]:
    ids = {one.name: one.id for one in page.people()}
    kind = office.rules.kinds.get(item.facts.kind)
    do = tr("Do not use it any more, not even once, and do not hand it on. The club takes it back to look at it.")
    return (ids.get(name, ""), name), _piece(item, kind.name if kind else item.facts.kind, why, do)


def _piece(item: Item, kind_name: str, why: str, do: str) -> CalledPiece:
    marks = " ".join(one for one in (item.facts.maker_mark, item.facts.serial) if one)
    return CalledPiece(item.tag, kind_name, marked_words(item), marks, why, do)


def _nobody_words(page: Page, item: Item) -> str:
    names = {one.id: one.name for one in page.people()}
    return tr("{tag}: {where}", tag=item.tag, where=where_words(page.whereabouts_of(item), names))

"""Give another name to one of two that two copies of the register named alike, and tell it."""

from collections.abc import Iterator

from msgspec.structs import replace

from inspector.duties.clashes import Found
from inspector.duties.office import Office
from inspector.duties.who import plain_name
from inspector.gear.item import Item
from inspector.gear.item_change import Altered, NewItemChange
from inspector.gear.merging import Clash
from inspector.gear.person import NewPersonChange, Person
from inspector.language import tr
from inspector.register.page import Page

_LONGEST_TAG = 24


def name_pieces_apart(office: Office, page: Page) -> tuple[Found, ...]:
    """Give the piece that was booked in later another tag; both are held, since either may carry the label."""
    pairs = page.same_tags()
    origins = page.origins(("item", key) for _, key in pairs)
    items = {item.id: item for item in page.items_with(key for pair in pairs for key in pair)}
    found: list[Found] = []
    for first, later in pairs:
        _retag(office, page, items[later], origins[("item", later)])
        found.append(Found(Clash.SAME_TAG, ("item", first), (), (), (later, items[later].tag)))
    return tuple(found)


def _retag(office: Office, page: Page, item: Item, origin: str) -> None:
    ending = f"-{origin}"
    tag = item.tag[: _LONGEST_TAG - len(ending)] + ending
    why = tr("Two copies of the register booked a piece in as {tag}.", tag=item.tag)
    changed = replace(item.facts, tag=_free(page, tag))
    page.add_item_change(item, NewItemChange(office.today, Altered.TAG, changed, office.officer.id, why))


def _free(page: Page, tag: str) -> str:
    number, made = 1, tag
    while page.has_tag(made):
        number += 1
        made = f"{tag[: _LONGEST_TAG - 3]}-{number}"
    return made


def name_people_apart(office: Office, page: Page) -> tuple[Found, ...]:
    """Give whoever was entered later another name; the name before stays among the former ones."""
    pairs = tuple(_same_names(page))
    origins = page.origins(("person", later.id) for later in pairs)
    for later in pairs:
        name = f"{later.name} ({origins[('person', later.id)]})"
        changed = replace(later, name=name, former_names=(*later.former_names, later.name))
        why = tr("Two copies of the register entered somebody called {name}.", name=later.name)
        page.add_person_change(NewPersonChange(office.today, changed, office.officer.id, why))
    return tuple(Found(Clash.SAME_NAME, ("person", later.id), (), ()) for later in pairs)


def _same_names(page: Page) -> Iterator[Person]:
    """Everybody whose name somebody has who was entered before."""
    names: set[str] = set()
    for person in sorted(page.people(), key=lambda one: one.id):
        if plain_name(person.name) in names:
            yield person
        names.add(plain_name(person.name))

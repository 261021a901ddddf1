"""A deed of the window as data: what it is called, what it asks, what it does, and what came of it."""

from collections.abc import Callable
from typing import Any, Generic, TypeVar

from msgspec import Struct

from inspector.desk.form.asked import Asked, Part
from inspector.desk.form.values import Values
from inspector.duties.form_facts import FormFacts
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper

About = TypeVar("About")


class Done(Struct, frozen=True):
    """What came of a deed. head, text: what is told; papers: what was printed; tag: the piece it was about.

    opens: its record is shown in any case, not only where the deed was begun on a record.
    """

    head: str
    text: str = ""
    papers: tuple[Paper, ...] = ()
    tag: str = ""
    opens: bool = False


class Deed(Struct, Generic[About], frozen=True):
    """name: in menus. title: above the form. says: what it does and what follows from it, in a sentence or two.

    fields: what is asked, from what the register knows and what the deed is about; a Part makes a heading.
    do: runs in the worker; what it refuses goes to the field it names. button: the word on it.
    fits: why it cannot be done with this; empty where it can. stays: the form is emptied and stays for the next one.
    goes_on: where somebody else wrote into the same field meanwhile, what it is about from then on (`Overtaken.seen`).
    """

    key: str
    name: str
    title: str
    says: str
    fields: Callable[[FormFacts, About], tuple[Asked | Part, ...]]
    do: Callable[[Office, About, Values], Done]
    button: str
    fits: Callable[[About], str] = lambda _: ""
    stays: bool = False
    goes_on: Callable[[About, Any], About] = lambda _, seen: seen

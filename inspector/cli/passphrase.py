"""Ask for a passphrase: hidden on a terminal, or from the environment of a script; never on the command line."""

import os
import sys

import click

from inspector.duties.keep_passphrases import is_asked, second_asked, vouch, vouch_second
from inspector.duties.office import Office
from inspector.language import tr
from inspector.refused import Refused

OWN = "INSPECTOR_PASSPHRASE"
SECOND = "INSPECTOR_SECOND_PASSPHRASE"
NEW = "INSPECTOR_NEW_PASSPHRASE"
KEY = "INSPECTOR_KEY_PASSPHRASE"


def vouched(office: Office) -> Office:
    """The office with the person at the desk vouched for, where the club wants passphrases and he gives his."""
    if not is_asked(office):
        return office
    label = tr("Passphrase of {name} (empty: the name stands as stated)", name=office.officer.name)
    return vouch(office, hidden(OWN, label, twice=False))


def with_second(office: Office, named: str) -> Office:
    """The office for one deed, its second person vouched for where the club requires passphrases and he gives his."""
    person = second_asked(office, named)
    if person is None:
        return office
    label = tr("Passphrase of {name}, the second name", name=person.name)
    return vouch_second(office, person.id, hidden(SECOND, label, twice=False))


def new_passphrase(name: str) -> str:
    """A new passphrase, typed twice."""
    return _needed(NEW, tr("New passphrase of {name}", name=name), twice=True)


def key_passphrase(*, new: bool = False) -> str:
    """The passphrase of this machine's signing key; a new one is typed twice."""
    label = tr("New passphrase of the signing key") if new else tr("Passphrase of the signing key")
    return _needed(KEY, label, twice=new)


def _needed(variable: str, label: str, *, twice: bool) -> str:
    typed = hidden(variable, label, twice=twice)
    if not typed:
        why = tr("None was typed.")
        what = tr("Type it on a terminal, or put it into {variable} for a script.", variable=variable)
        raise Refused(tr("passphrase"), why, what)
    return typed


def hidden(variable: str, label: str, *, twice: bool) -> str:
    """What is secret: from the environment, else from a terminal, hidden; nothing where there is neither."""
    if (given := os.environ.get(variable)) is not None:
        return given
    if not sys.stdin.isatty():
        return ""
    asked: str = click.prompt(
        label, default="", show_default=False, hide_input=True, confirmation_prompt=twice, err=True
    )
    return asked

"""The help of every command in the officer's language.

Help stands in the source as docstrings and options' texts, in English, and is looked up at the start, before anything
of it is shown. What click itself says ("Usage:", "Missing option") click looks up by gettext; app names our catalogue
for that.
"""

from copy import copy

import click

from inspector.language import tr


def spoken(command: click.Command) -> click.Command:
    """A copy of a command and all commands below it, with their help and their options' help in that language."""
    made = copy(command)
    made.help = tr(command.help) if command.help else command.help
    made.params = [_spoken_option(one) for one in command.params]
    if isinstance(made, click.Group) and isinstance(command, click.Group):
        made.commands = {name: spoken(one) for name, one in command.commands.items()}
    return made


def _spoken_option(given: click.Parameter) -> click.Parameter:
    if not isinstance(given, click.Option) or not given.help:
        return given
    made = copy(given)
    made.help = tr(given.help)
    return made

"""The command that carries a register over to a server and back."""

import click
from msgspec.structs import replace

from inspector.cli import say
from inspector.cli.wiring import Desk, PlaceType
from inspector.duties.move_register import move_register, moved_words
from inspector.duties.register_place import Place


@click.command()
@click.argument("source", metavar="REGISTER", type=PlaceType())
@click.argument("target", metavar="TO", type=PlaceType())
@click.pass_obj
def move(desk: Desk, source: Place, target: Place) -> None:
    """Carry the register in the folder or at the address REGISTER over to an empty database or folder TO.

    An address is postgresql://LOGIN@SERVER/DATABASE, without a password. The same command again completes a move that
    was broken off.
    """
    moved = move_register(replace(desk, folder=source).seated(), target)
    for line in moved_words(moved):
        say.paragraph(line)

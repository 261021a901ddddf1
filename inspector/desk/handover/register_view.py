"""The register itself: where it lies, when it was copied last, how it was handed on."""

import os
from collections.abc import Callable

from msgspec import Struct
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

from inspector.desk.look import GRID, Type
from inspector.desk.plain import Fold, button, column, facts, row, said
from inspector.desk.record_parts import section
from inspector.desk.rig_table import table
from inspector.duties.keep_key import Keys, grouped_key, key_words, what_it_proves
from inspector.duties.tell_copies import CopyFile, plan_words
from inspector.duties.tell_register import CopyTold, LastCopy, MergeTold, RegisterTold
from inspector.gear.papers import HandoverProtocol, ProtocolTable
from inspector.language import show_day, tr, tr_n

_MOST_COPIES = 6
_MAY_BREAK = "\N{ZERO WIDTH SPACE}"
Does = Callable[[], object]


class Acts(Struct, frozen=True):
    """What the page's buttons set off."""

    open_folder: Does
    copy: Does
    clock: Does
    plan: Does
    take_copy: Does
    bring_back: Does
    verify: Does
    hand_on: Does
    move: Does
    print_again: Does
    archive: Does
    look_through: Does
    lines: Does
    make_key: Does
    enter_key: Does
    write_key: Does


def register_view(told: RegisterTold, acts: Acts) -> QWidget:
    """All of it."""
    parts = [_head(told, acts), _copies(told, acts), _field_copies(told, acts), _proof(told, acts)]
    return column([*parts, _handing_on(told, acts), _archives(told, acts), _key(told.keys, acts)], 2 * GRID)


def _head(told: RegisterTold, acts: Acts) -> QWidget:
    lines = [(tr("Equipment officer"), told.officer), (tr("Lies in"), told.place.replace(os.sep, os.sep + _MAY_BREAK))]
    parts = [said(told.club, Type.DISPLAY), facts(lines), *(said(one, bold=True) for one in told.mind)]
    for label in parts[1].findChildren(QLabel):
        label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)  # nobody copies the breaks
    buttons = [button(tr("Open its folder"), acts.open_folder)] if told.is_file else []
    buttons.append(button(tr("Move it"), acts.move, name=tr("Move the register")))
    buttons += [button(tr("The clock is right"), acts.clock)] if told.clock_is_back else []
    return column([*parts, row(buttons)], GRID)


def _copies(told: RegisterTold, acts: Acts) -> QWidget:
    if not told.is_file:
        only = tr("A database server is copied with its own tool.")
        return section(tr("Copies"), said(only))
    made = _copy_words(told.last_copy) if told.last_copy else [said(tr("No copy was ever made."), bold=True)]
    restore = tr("A copy is put back into a folder without a register: menu Register, Open another register.")
    return section(
        tr("Copies"), *made, said(plan_words(told.copies.plan)),
        row([button(tr("Back up now"), acts.copy, rank="first"), button(tr("Change the plan"), acts.plan)]),
        *_files(told.copies.files),
        said(restore, Type.SMALL, faint=True),
    )  # fmt: skip


def _copy_words(copy: LastCopy) -> list[QWidget]:
    day = show_day(copy.at.date()) if copy.at else tr("an unknown day")
    since = tr_n("One line was written since.", "{count} lines were written since.", copy.later_count)
    if not copy.later_count:
        since = tr("Nothing was written since.")
    head = said(tr("The last copy was made on {day}. {since}", day=day, since=since))
    return [head, facts([(tr("File"), copy.file), (tr("Head of its ledger"), copy.head)], size=Type.SMALL)]


def _files(files: tuple[CopyFile, ...]) -> list[QWidget]:
    """The copies beside the register, opened by their head."""
    if not files:
        return []
    title = tr_n("One copy beside the register", "{count} copies beside the register", len(files))
    lines = [f"{show_day(one.on)}  {one.name}" for one in files]
    return [Fold(title, lambda: column([said(one, Type.SMALL) for one in lines], 0))]


def _field_copies(told: RegisterTold, acts: Acts) -> QWidget:
    back = button(tr("Bring a copy back"), acts.bring_back)
    clashes = [_clashes(one) for one in told.merges]
    if told.copy_words:
        return section(tr("Field copy"), said(told.copy_words, bold=True), row([back]), *clashes)
    buttons = [button(tr("Take a field copy along"), acts.take_copy), back]
    none = tr("A field copy is worked on where there is no way to this register, and brought back afterwards.")
    lines = [said(_copy_line(one)) for one in told.field_copies[:_MOST_COPIES]]
    return section(tr("Field copies"), *(lines or [said(none)]), row(buttons), *clashes)


def _clashes(told: MergeTold) -> QWidget:
    """What did not go together when a copy was brought back."""
    day = show_day(told.at.date()) if told.at else tr("an unknown day")
    title = tr_n(
        "{origin}, brought back on {day}: {count} thing did not go together",
        "{origin}, brought back on {day}: {count} things did not go together",
        told.count,
        origin=told.origin,
        day=day,
    )
    return Fold(title, lambda: column([said(line) for line in told.lines], 0))


def _copy_line(told: CopyTold) -> str:
    copy = told.copy
    words = {"origin": copy.origin, "day": show_day(copy.taken_on), "holder": told.holder}
    if copy.brought_back is None:
        return tr("{origin}: taken by {holder} on {day}, not brought back yet.", **words)
    back = show_day(copy.brought_back)
    return tr("{origin}: taken by {holder} on {day}, last brought back on {back}.", back=back, **words)


def _proof(told: RegisterTold, acts: Acts) -> QWidget:
    count = tr_n("The ledger has one line.", "The ledger has {count} lines.", told.line_count)
    head = facts([(tr("Its head"), told.head)], size=Type.SMALL)
    check = button(tr("Check that nothing was changed"), acts.verify)
    return section(tr("Ledger"), said(count), head, row([check]))


def _archives(told: RegisterTold, acts: Acts) -> QWidget:
    what = tr("All of it in one file with checksums, for another copy of the program or for whoever is to check it.")
    buttons = [button(tr("Write an archive"), acts.archive)] if told.is_file else []
    buttons += [
        button(tr("Look an archive through"), acts.look_through),
        button(tr("Every row as JSON"), acts.lines),
    ]
    opens = tr("An archive is opened like a copy: menu Register, Open another register.")
    return section(tr("Archives"), said(what), row(buttons), said(opens, Type.SMALL, faint=True))


def _key(keys: Keys, acts: Acts) -> QWidget:
    """The key of this machine, those that the register knows, and what a signature proves."""
    make = button(tr("Make a signing key"), acts.make_key)
    if not keys.here:
        told, buttons = tr("This machine has no signing key."), [make]
    elif not keys.is_known:
        told = tr("This machine has a signing key that this register does not know.")
        buttons = [button(tr("Enter the key"), acts.enter_key), make]
    else:
        told = tr("This machine has a signing key: archives and bundles can be signed.")
        buttons = [button(tr("Write it for paper"), acts.write_key), make]
    known = [(grouped_key(one.fingerprint), key_words(one)) for one in keys.known]
    lines = [column([said(key, Type.SMALL), said(words, Type.SMALL, faint=True)], 0) for key, words in known]
    return section(tr("Signing key"), said(told), *lines, row(buttons), said(what_it_proves(), Type.SMALL, faint=True))


def _handing_on(told: RegisterTold, acts: Acts) -> QWidget:
    buttons = [button(tr("Hand the register on"), acts.hand_on)]
    if told.protocol is None:
        never = tr("It was never handed on. Before that, count everything and close the count.")
        return section(tr("Handing on"), said(never), row(buttons))
    buttons.append(button(tr("Print the last protocol again"), acts.print_again))
    return section(tr("Handing on"), _handed_on(told.protocol), row(buttons), *_lists(told.protocol))


def _handed_on(protocol: HandoverProtocol) -> QWidget:
    day = show_day(protocol.imprint.on)
    words = {"old": protocol.from_name, "new": protocol.to_name, "day": day, "number": protocol.imprint.number}
    return said(tr("{old} handed it on to {new} on {day}, protocol {number}.", **words))


def _lists(protocol: HandoverProtocol) -> list[QWidget]:
    mind = Fold(tr("What to mind"), lambda: column([said(one) for one in protocol.mind]))
    stood = said(tr("What stood on that day:"), Type.SMALL, faint=True)
    return [stood, *(_list(one) for one in protocol.tables), mind]


def _list(of: ProtocolTable) -> QWidget:
    """A list of the protocol, opened by its head; one without lines says so at once."""
    if not of.lines and not of.said:
        return column([said(of.title, Type.HEAD), said(of.none, faint=True)], 0)
    title = tr("{title} ({count})", title=of.title, count=len(of.lines))
    return Fold(title, lambda: _lines(of))


def _lines(of: ProtocolTable) -> QWidget:
    said_first: list[QWidget] = [said(of.said)] if of.said else []
    if not of.lines:
        return column([*said_first, said(of.none, faint=True)])
    cells = [[said(text) for text in line] for line in of.lines]
    return column([*said_first, table(of.columns, cells, [round(100 * share) for share in of.shares])])

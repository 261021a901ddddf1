"""Bring a field copy back: both histories are kept, what does not go together is told, verdicts are judged anew."""

from collections.abc import Sequence
from pathlib import Path

from inspector.duties.call_in import hold_all_late
from inspector.duties.clash_words import told_clash
from inspector.duties.clashes import Found, clashes
from inspector.duties.judging import judge_and_keep
from inspector.duties.name_apart import name_people_apart, name_pieces_apart
from inspector.duties.office import Office, told_of
from inspector.duties.withdraw_recall import let_go_late
from inspector.gear.item import Item
from inspector.gear.merging import Clash, Merged
from inspector.gear.opinion import NewOpinion, Stance
from inspector.language import tr
from inspector.register.chains import MERGE
from inspector.register.merging import Line, Other
from inspector.register.other_copy import other_copy
from inspector.register.page import Page
from inspector.register.where_it_lies import REGISTER_FILE

_HELD = {Clash.WHAT_IT_IS, Clash.LEFT_FOR_GOOD, Clash.WHERE_IT_IS, Clash.SAME_TAG}


class _Looked(Exception):  # noqa: N818 - no error: it undoes what was only tried
    """Carries what would come of it out of the page that is left without being entered."""

    def __init__(self, merged: Merged) -> None:
        super().__init__()
        self.merged = merged


def bring_back(office: Office, file: Path) -> Merged:
    """Take over what another copy of this register holds and this one does not, in one deed; the copy stays as it is.

    file: the copy's file, or the folder it lies in. Brought back again, only what is new since comes. Refused where it
    is a copy of another register, where its history is not whole, or where it goes by the name of this one.
    """
    with other_copy(_file(file)) as other, office.book.page() as page:
        return _merge(office, page, other)


def what_would_come(office: Office, file: Path) -> Merged:
    """The same, and then everything is undone."""
    try:
        with other_copy(_file(file)) as other, office.book.together(), office.book.page() as page:
            raise _Looked(_merge(office, page, other))
    except _Looked as looked:
        return looked.merged


def _file(named: Path) -> Path:
    return named / REGISTER_FILE if named.is_dir() else named


def _merge(office: Office, page: Page, other: Other) -> Merged:
    missing = page.brought(other)
    if not missing:
        return Merged(other.origin, 0, 0, (), ())
    ours = page.unknown_to(other)
    row_count = page.take_over(other, missing)
    page.check_names_apart()
    theirs = page.touches(missing)
    found = (*clashes(page.touches(_own_deeds(ours)), page.touches(_own_deeds(missing))), *_rulebooks(ours, missing))
    found = (*found, *name_people_apart(office, page), *name_pieces_apart(office, page))
    held = (*_hold(office, page, found), *hold_all_late(office, page), *let_go_late(office, page))
    touched = {one.owner[1] for one in theirs if one.owner[0] == "item"} | {item.id for item in held}
    judged = [judge_and_keep(office, page, item) for item in told_of(office, page.items_with(touched))]
    told = tuple(told_clash(office, page, one) for one in found)
    merged = Merged(other.origin, len(missing), row_count, tuple(one.dossier.item.tag for one in judged), told)
    facts = {"heads": page.ends(missing), "copy": other.origin, "as": merged}
    page.enter("merge", by=office.officer.id, at=office.now, facts=facts)
    return merged


def _own_deeds(lines: Sequence[Line]) -> list[Line]:
    """Without what a merge wrote: it followed from deeds that are there themselves."""
    return [line for line in lines if line.deed != MERGE]


def _rulebooks(ours: Sequence[Line], theirs: Sequence[Line]) -> tuple[Found, ...]:
    own, other = (
        tuple(line.hash for line in lines if any(table == "adoption" for table, _ in line.rows))
        for lines in (ours, theirs)
    )
    return (Found(Clash.RULEBOOK, ("adoption", ""), own, other),) if own and other else ()


def _hold(office: Office, page: Page, found: Sequence[Found]) -> tuple[Item, ...]:
    """Doubt the pieces of which two copies say what cannot both be so; a piece that left for good stays as it is."""
    keys = {one.owner[1] for one in found if one.clash in _HELD and one.owner[0] == "item"}
    keys |= {one.beside[0] for one in found if one.beside[0]}
    items = page.items_with(keys)
    places = page.whereabouts(items)
    held = tuple(item for item in items if not places[item.id].where.is_closed)
    why = tr("Two copies of the register say different things of it; nobody has looked yet which is so.")
    for item in held:
        page.add_opinion(item, NewOpinion(office.today, office.officer.id, Stance.DOUBTS, why))
    return held

"""Keep rigs in the register under a reference of the officer's own, and find them again."""

from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.rig_parts import known_parts
from inspector.gear.rig import KeptRig, Rig
from inspector.language import tr
from inspector.refused import Refused

_LONGEST_REF = 40


def keep_rig(office: Office, ref: str, rig: Rig) -> KeptRig:
    """Keep a rig. Every part of it must be a piece of the register or a loose end, its vehicles known, ref free."""
    own = ref.strip()
    if not own or len(own) > _LONGEST_REF:
        why = tr("A reference has 1 to {most} signs.", most=_LONGEST_REF)
        raise Refused(tr("reference"), why, tr("Write a short one, for example R-01."))
    check_line(tr("reference"), own)
    with office.book.page() as page:
        own = page.own_ref(own)
        if any(one.ref.casefold() == own.casefold() for one in page.rigs()):
            why = tr("Another rig has the reference “{ref}”.", ref=own)
            raise Refused(tr("reference"), why, tr("Choose a free one; a kept rig is never changed."))
        kept = page.add_rig(own, office.today, known_parts(page, rig, office.rules))
        page.enter("keep rig", by=office.officer.id, at=office.now, facts={"ref": own, "as": kept.rig})
    return kept


def rigs(office: Office) -> tuple[KeptRig, ...]:
    """Every kept rig, by reference."""
    with office.book.reading() as page:
        return page.rigs()


def rig(office: Office, ref: str) -> KeptRig:
    """The rig with this reference, in any case."""
    known = rigs(office)
    for one in known:
        if one.ref.casefold() == ref.strip().casefold():
            return one
    why = tr("No rig has the reference “{ref}”.", ref=ref)
    listed = ", ".join(one.ref for one in known) or tr("none yet")
    raise Refused(tr("rig"), why, tr("Use one of: {refs}.", refs=listed))

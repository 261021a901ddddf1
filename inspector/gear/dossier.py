"""All that is known of one piece up to one day: what judging reads."""

from datetime import date

from msgspec import Struct

from inspector.gear.custody import Custody
from inspector.gear.evidence import Quarantine, Release
from inspector.gear.fitting import Fitting
from inspector.gear.inspection import Inspection
from inspector.gear.item import Item
from inspector.gear.item_change import ItemChange
from inspector.gear.kind import Kind
from inspector.gear.opinion import Opinion
from inspector.gear.recall_notice import PieceCall
from inspector.gear.repair import Repair
from inspector.gear.strike import Strike
from inspector.gear.use import Exposure, Use
from inspector.gear.whereabouts import WhereaboutsEntry


class Dossier(Struct, frozen=True):
    """Facts of one item on the judging day; each tuple in order of date. retired_on: the day of a stored retirement.

    Struck entries are not among the facts; the strikes are. names: ids and names of the people who speak in them.
    untold: returns from a loan of which nobody told what weather the piece saw. finds: when it was found again.
    quarantines, evidence_releases: incidents whose evidence it is or was, and who let it go.
    calls: the recalls it stands or stood under.
    """

    kind: Kind
    item: Item
    on: date
    inspections: tuple[Inspection, ...] = ()
    uses: tuple[Use, ...] = ()
    exposures: tuple[Exposure, ...] = ()
    retired_on: date | None = None
    retired_why: str = ""
    opinions: tuple[Opinion, ...] = ()
    strikes: tuple[Strike, ...] = ()
    names: tuple[tuple[str, str], ...] = ()
    fittings: tuple[Fitting, ...] = ()
    untold: tuple[Custody, ...] = ()
    finds: tuple[WhereaboutsEntry, ...] = ()
    repairs: tuple[Repair, ...] = ()
    changes: tuple[ItemChange, ...] = ()
    quarantines: tuple[Quarantine, ...] = ()
    evidence_releases: tuple[Release, ...] = ()
    calls: tuple[PieceCall, ...] = ()

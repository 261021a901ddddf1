"""No text of a form is missed: every deed of the window is opened on something it can be about."""

import pkgutil
from collections.abc import Callable
from importlib import import_module
from inspect import Parameter, getmembers, isfunction, signature
from typing import Any, get_args, get_origin

import pytest
from pytestqt.qtbot import QtBot

from inspector.desk import deeds
from inspector.desk.deeds.contact import Reached
from inspector.desk.deeds.debriefs import Telling
from inspector.desk.deeds.exchange import ToExport
from inspector.desk.deeds.report import ToReport
from inspector.desk.deeds.rulebook import Compared
from inspector.desk.form.deed import Deed
from inspector.desk.opened import Opened, opened
from inspector.desk.recall.opened_recall import Sought
from inspector.desk.window import DeskWindow
from inspector.duties.call_in import call_in
from inspector.duties.club_settings import ClubSettings, club_settings
from inspector.duties.copy_by_plan import CopyPlan
from inspector.duties.look_up import trips
from inspector.duties.office import Office
from inspector.duties.person_in_full import PersonInFull, in_full
from inspector.duties.report_incident import report_incident
from inspector.duties.take_stock import begin_count
from inspector.duties.tell_count import CountTold, count_told
from inspector.duties.tell_incident import IncidentTold, incident_told, incidents
from inspector.duties.tell_recall import RecallTold, recall_told
from inspector.duties.vehicle_record import VehicleRecord, vehicle_record
from inspector.gear.import_list import Imported, Matching
from inspector.gear.incident import Gravity, NewIncident
from inspector.gear.kind import Kind
from inspector.gear.person import Contact, Passphrases
from inspector.gear.recall_notice import Issuer, Meant, NewRecall
from inspector.gear.rig import KeptRig, Method, Rig
from inspector.gear.trip import Trip, Vehicle
from inspector.language import tr
from tests.language.conftest import KNOWN
from tests.language.shown import assert_none_missed, shown_in

Make = Callable[..., Deed[Any]]


def _makers() -> dict[str, Make]:
    """Every function of the deeds that makes a deed, by its module and name."""
    found: dict[str, Make] = {}
    for module in pkgutil.iter_modules(deeds.__path__, "inspector.desk.deeds."):
        for name, one in getmembers(import_module(module.name), isfunction):
            makes = signature(one).return_annotation
            if one.__module__ == module.name and not name.startswith("_") and get_origin(makes) is Deed:
                found[f"{module.name.rpartition('.')[2]}.{name}"] = one
    return found


_MAKERS = _makers()


@pytest.fixture
def abouts(club: Office) -> dict[object, Any]:
    """Something of each sort that a deed is about."""
    report_incident(club, NewIncident(club.today, Gravity.ACCIDENT, "the long beach", "leader", ("SH-001",), ("V1",)))
    begin_count(club, "C1", "")
    trip, record, person = trips(club)[0], vehicle_record(club, "V1"), in_full(club, club.officer.id)
    (report,) = incidents(club)
    notice = NewRecall(club.today, Issuer.CLUB, Meant(tags=("SH-001",)), "leader", "leader", "leader")
    recalled = call_in(club, notice).recall
    return {
        Opened: opened(club, "HR-007"),
        Kind: club.rules.kinds["hitch_receiver"],
        tuple[str, ...]: ("SH-002",),
        tuple[tuple[str, str], ...]: ((tr("all gear"), "all"),),
        str: trip.ref,
        Trip: trip,
        KeptRig: KeptRig("", "RG-01", club.today, Rig("", Method.TOW_OUT, "V1", "", (("SH-001",),))),
        Vehicle: record.vehicle,
        VehicleRecord: record,
        PersonInFull: person,
        Reached: Reached(person.row.person, Contact()),
        CountTold: count_told(club, "C1"),
        IncidentTold: incident_told(club, report.ref),
        Telling: Telling(trip, ()),
        ToReport: ToReport(),
        RecallTold: recall_told(club, recalled.ref),
        Sought: Sought((club.rules.kinds["bow_shackle"],)),
        Passphrases: Passphrases.WANTED,
        CopyPlan: CopyPlan(),
        Imported: Imported("I-AAAA-0001", club.today, "list.csv", "", "", (), (), (), Matching("", 0, ())),
        ClubSettings: club_settings(club),
        Compared: Compared("", ("HR-007",)),
        ToExport: ToExport(("SH-001", "SH-002", "HR-007"), ("SH-001", "SH-002")),
        Any: opened(club, "SH-001"),
        type(None): None,
        None: None,
    }


def _made(make: Make, abouts: dict[object, Any]) -> Deed[Any]:
    """The deed, its maker given something of each sort that it asks for."""
    asked = [one for one in signature(make).parameters.values() if one.default is Parameter.empty]
    return make(*(abouts.get(one.annotation, lambda *_: None) for one in asked))


def test_no_text_of_the_form_of_any_deed_is_missed(qtbot: QtBot, desk: DeskWindow, abouts: dict[object, Any]) -> None:
    """All in one window, since a register and a window for each would take a minute."""
    told: list[tuple[str, str]] = []
    for name, make in _MAKERS.items():
        deed = _made(make, abouts)
        (sort,) = get_args(signature(make).return_annotation)
        told += [(name, one) for one in _texts_of(qtbot, desk, deed, abouts[sort])]

    assert len(_MAKERS) > 70
    assert_none_missed(told, (*KNOWN, "C1", "T1", "V1"))


def _texts_of(qtbot: QtBot, desk: DeskWindow, deed: Deed[Any], about: object) -> list[str]:
    """All that a deed and its form say, also of what is lacking when it is tried at once."""
    desk.pages.show_deed(deed, about)
    qtbot.waitUntil(lambda: desk.background.is_idle)
    page = desk.pages.deed_page
    assert desk.pages.currentWidget() is page and page.deed is deed
    opened_with = [text for _, text in shown_in(page)]
    if any(box.asked.needed and not str(box.value() or "").strip() for box in page.boxes):
        page.try_do()  # what is lacking is said at the fields
        qtbot.waitUntil(lambda: desk.background.is_idle)
    after = [text for _, text in (*shown_in(page), *shown_in(desk.notice))]
    return [deed.name, deed.title, deed.says, deed.button, deed.fits(about), *opened_with, *after]

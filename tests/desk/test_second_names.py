"""A second name is proved in the form of its deed, where the club requires passphrases and nowhere else."""

from collections.abc import Callable
from datetime import timedelta
from typing import Any

import pytest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from inspector.desk.deeds import competence, evidence, judgement, labels, withdraw_recall
from inspector.desk.form.deed import Deed
from inspector.desk.form.form_page import FormPage
from inspector.desk.form.lines import SecretLine
from inspector.desk.opened import opened
from inspector.desk.window import DeskWindow
from inspector.duties.call_in import call_in
from inspector.duties.keep_draft import kept
from inspector.duties.keep_passphrases import set_passphrase, set_wish
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.person_in_full import in_full, scopes
from inspector.duties.record_use import record_use
from inspector.duties.report_incident import report_incident
from inspector.duties.tell_incident import incident_told, incidents
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.tell_recall import recall_told, recalls
from inspector.gear.incident import Gravity, NewIncident
from inspector.gear.person import Passphrases
from inspector.gear.recall_notice import Issuer, Meant, NewRecall
from inspector.gear.use import NewUse
from tests.desk.deed_forms import faults, form_of_deed, keep, lacks, write
from tests.desk.people import ENDING, OWN_WORDS, SECOND, peopled, with_passphrase

PROOF, BENS = "second_passphrase", "nine grey gulls at noon"
Forms = list[tuple[Deed[Any], object]]


@pytest.fixture
def club(office: Office) -> Office:
    """A club that requires passphrases, with something for each deed of two; its officer gave his."""
    made = peopled(office).at(office.now + timedelta(days=1))  # nobody is one of two names on his first day
    record_use(made, "SH-002", NewUse(made.today, 2, by=made.officer.id))
    report_incident(made, NewIncident(made.today, Gravity.ACCIDENT, "the long beach", "It opened.", ("SH-001",)))
    meant = Meant("Kelpline", ("bow_shackle",))
    call_in(made, NewRecall(made.today, Issuer.MAKER, meant, "Pins too hard.", "Send it back.", "Notice 7", made.today))
    proved = with_passphrase(made)
    set_passphrase(proved, SECOND, BENS)
    set_wish(proved, Passphrases.REQUIRED)
    return proved


@pytest.fixture
def window(open_desk: Callable[[Office], DeskWindow], club: Office) -> DeskWindow:
    """The window on it."""
    return open_desk(club)


def forms_of(club: Office) -> Forms:
    """Every deed that asks for a second name, and what it is about."""
    incident, recall = incident_told(club, incidents(club)[0].ref), recall_told(club, recalls(club)[0].ref)
    piece, ending = opened(club, "SH-002"), in_full(club, ENDING)
    return [
        (evidence.release(incident), incident),
        (withdraw_recall.withdraw(recall), recall),
        (judgement.strike(piece), piece),
        (labels.label_anew(piece), piece),
        (labels.owner(piece), piece),
        (competence.give(ending, scopes(club)), ending),
        (competence.renew(ending), ending),
    ]


def secret_of(form: FormPage) -> SecretLine:
    box = form.box(PROOF)
    assert isinstance(box, SecretLine)
    return box


def tried(qtbot: QtBot, window: DeskWindow, form: FormPage) -> dict[str, str]:
    """Try the deed; what is said to be wrong, by the key of the field."""
    form.try_do()
    qtbot.waitUntil(lambda: window.background.is_idle)
    return faults(form)


def test_the_passphrase_is_asked_below_the_second_name_and_shown_to_nobody(
    qtbot: QtBot, club: Office, window: DeskWindow
) -> None:
    for deed, about in forms_of(club):
        form = form_of_deed(qtbot, window, deed, about)
        keys = [box.asked.key for box in form.boxes]
        assert keys.index(PROOF) == keys.index("second") + 1, deed.key
        assert secret_of(form).line.echoMode() is QLineEdit.EchoMode.Password, deed.key
        assert form.box(PROOF).asked.needed is form.box("second").asked.needed, deed.key
        assert lacks(form) == [], deed.key


def test_where_it_is_not_required_no_form_asks_for_it(qtbot: QtBot, club: Office, window: DeskWindow) -> None:
    set_wish(club, Passphrases.WANTED)
    for deed, about in forms_of(club):
        form = form_of_deed(qtbot, window, deed, about)
        assert "second" in (keys := {box.asked.key for box in form.boxes}) and PROOF not in keys, deed.key


def test_a_missing_or_wrong_one_is_told_at_its_field_nothing_typed_is_lost_and_the_right_one_does_the_deed(
    qtbot: QtBot, club: Office, window: DeskWindow
) -> None:
    ref = incidents(club)[0].ref
    deed, about = forms_of(club)[0]
    form = form_of_deed(qtbot, window, deed, about)
    form.box("tag SH-001").give("yes")
    write(form, why="The inquiry is over.", second=SECOND)
    typed = {box.asked.key: box.draft for box in form.boxes}

    assert "It is needed." in tried(qtbot, window, form)[PROOF]
    for wrong, says in ((OWN_WORDS, "It is not that of Ben Second."), ("   ", "It is needed.")):
        secret_of(form).line.setText(wrong)
        assert says in tried(qtbot, window, form)[PROOF]
        assert secret_of(form).line.text() == wrong
    assert {box.asked.key: box.draft for box in form.boxes} == typed
    assert [one.tag for one in incident_told(club, ref).kept] == ["SH-001"]

    secret_of(form).line.setText(BENS)
    keep(qtbot, window)
    assert incident_told(club, ref).kept == ()
    assert "Proved by passphrase: First officer and Ben Second." in told_ledger(club, last=1)[0].sentence


def test_a_second_person_without_one_is_told_to_set_one(qtbot: QtBot, club: Office, window: DeskWindow) -> None:
    deed, about = forms_of(club)[4]
    form = form_of_deed(qtbot, window, deed, about)
    write(form, owner="Club", why="given", second=ENDING)
    said = tried(qtbot, window, form)[PROOF]
    assert "Cora Ending has none yet" in said and "to set one first" in said
    assert form.box("owner").draft == "Club"

    write(form, second="nobody named")
    keep(qtbot, window)
    assert open_item(club, "SH-002").dossier.item.facts.owner == "Club"


def test_every_other_form_hands_it_on(qtbot: QtBot, club: Office, window: DeskWindow) -> None:
    more: dict[str, dict[str, str]] = {
        "label anew": {"basis": "working load limit (WLL)", "rating": "9.5 t", "stated_on": "on the piece itself"},
        "change owner": {"owner": "Club"},
        "give competence": {"scope": "pin (Hitch pin)"},
        "renew competence": {"until": "1 Jan 2028"},
    }
    for deed, about in forms_of(club)[1:]:
        form = form_of_deed(qtbot, window, deed, about)
        write(form, why="Both looked at it.", second=SECOND, second_passphrase=BENS, **more.get(deed.key, {}))
        keep(qtbot, window)
        line = told_ledger(club, last=1)[0]
        assert line.deed == deed.key and "Proved by passphrase" in line.sentence, (deed.key, faults(form))


def test_a_draft_holds_no_passphrase(qtbot: QtBot, club: Office, window: DeskWindow) -> None:
    deed, about = forms_of(club)[1]
    form = form_of_deed(qtbot, window, deed, about)
    write(form, why="another maker's", second=SECOND, second_passphrase=BENS)
    window.back()
    qtbot.waitUntil(lambda: window.background.is_idle)
    draft = kept(club, deed.key)
    assert draft is not None and draft.values["why"] == "another maker's"
    assert BENS not in str(draft.values)

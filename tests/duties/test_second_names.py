"""Where the club requires passphrases, a deed that takes two people is done only where both gave theirs for it."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.change_item import change_owner, label_anew
from inspector.duties.change_person import Widening, give_competence, renew_competence
from inspector.duties.form_facts import form_facts
from inspector.duties.keep_passphrases import (
    passes_nothing,
    second_asked,
    set_passphrase,
    set_wish,
    vouch_second,
)
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.preview_verdict import preview_verdict
from inspector.duties.record_inspection import record_inspection
from inspector.duties.release_evidence import release_evidence, release_vehicle
from inspector.duties.sit_down import seat
from inspector.duties.sorts_of_papers import SORTS
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.duties.tell_incident import incidents
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.tell_recall import recalls
from inspector.duties.verify_book import verify_book
from inspector.duties.withdraw_recall import withdraw_recall
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Passphrases
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good, shackle, strap
from tests.duties.incidents import beach, reported
from tests.duties.notices import DI, booked, entered
from tests.duties.rigs import fit, member
from tests.duties.test_opinions import add
from tests.duties.test_passphrases import ADAS, BOS, wanted
from tests.duties.test_repairs import wll

__all__ = ["wanted"]

ADA, BO, CY = "Ada Officer", "Bo Second", "Cy Third"
WHY = "the inquiry is over, and both looked at it"
FIELD = "passphrase of the second name"
Deed = Callable[[Office, str], object]


@pytest.fixture
def required(wanted: Office) -> Office:
    """A club that requires passphrases, with something for each deed of two; Ada is at the desk and gave hers.

    Bo has one as well; Cy, who is as competent, has none.
    """
    beach(wanted)
    add(wanted, CY)
    fit(wanted, shackle("SH-8"), SHACKLE_READINGS)
    book_in(wanted, shackle("SH-9", owner=ADA))
    book_in(wanted, shackle("LB-1"))
    booked(wanted, "RC-1", "KS240150")
    entered(wanted)
    until = wanted.today + timedelta(days=30)
    give_competence(wanted, DI, Competence("strap", wanted.today, until), Widening("passed the course"))
    reported(wanted)
    set_passphrase(wanted, BO, BOS)
    set_wish(wanted, Passphrases.REQUIRED)
    return wanted


def deeds_of(office: Office) -> dict[str, Deed]:
    """By the name of its ledger line, each deed that takes a second name."""
    entry = next(row.ref for row in history_of(office, "SH-8") if row.ref)
    incident, recall = incidents(office)[0].ref, recalls(office)[0].ref
    held = Competence("rope", office.today)
    later = office.today + timedelta(days=400)
    return {
        "strike": lambda desk, second: strike_entry(desk, "SH-8", entry, second, WHY),
        "release evidence": lambda desk, second: release_evidence(desk, incident, "SH-1", second=second, why=WHY),
        "release vehicle": lambda desk, second: release_vehicle(desk, incident, "V-2", second=second, why=WHY),
        "withdraw recall": lambda desk, second: withdraw_recall(desk, recall, WHY, second=second),
        "label anew": lambda desk, second: label_anew(desk, "LB-1", wll("9.5 t"), WHY, second=second),
        "change owner": lambda desk, second: change_owner(desk, "SH-9", "Club", WHY, second=second),
        "give competence": lambda desk, second: give_competence(desk, ADA, held, Widening(WHY, second)),
        "renew competence": lambda desk, second: renew_competence(desk, DI, "strap", later, Widening(WHY, second)),
    }


def head(office: Office) -> str:
    with office.book.reading() as page:
        return page.head()


def refused(deed: Deed, desk: Office, second: str) -> Refused:
    with pytest.raises(Refused) as caught:
        deed(desk, second)
    return caught.value


def test_a_second_name_that_is_only_typed_is_refused_in_every_deed_of_two_and_nothing_is_kept(required: Office) -> None:
    before = head(required)
    for name, deed in deeds_of(required).items():
        said = refused(deed, required, BO)
        assert said.field == FIELD, name
        assert "The club requires passphrases, and Bo Second has not given one" in said.why, name
        assert said.what_to_do == "Let Bo Second come to the desk and give it.", name
    assert head(required) == before


def test_a_second_person_who_has_none_yet_is_refused_and_told_what_to_do(required: Office) -> None:
    assert second_asked(required, CY) is None
    for name, deed in deeds_of(required).items():
        said = refused(deed, vouch_second(required, CY, BOS), CY)
        assert (said.field, said.why) == (FIELD, "The club requires passphrases, and Cy Third has none yet."), name
        assert "help Cy Third to set one first" in said.what_to_do, name


def test_one_who_has_none_is_told_the_same_as_first_name(required: Office) -> None:
    deed = deeds_of(required)["strike"]
    assert "Cy Third has none yet" in refused(deed, seat(required, CY), BO).why


def test_every_deed_of_two_is_done_where_both_gave_theirs_and_its_ledger_line_says_so(required: Office) -> None:
    for name, deed in deeds_of(required).items():
        deed(vouch_second(required, BO, BOS), BO)
        line = told_ledger(required, last=1)[0]
        assert line.deed == name
        assert line.sentence.endswith(" Proved by passphrase: Ada Officer and Bo Second."), name
    assert verify_book(required).faults == ()


def test_a_wrong_one_is_refused_at_its_field(required: Office) -> None:
    for wrong in (BOS.upper(), ADAS, f"{BOS} "):
        with pytest.raises(Refused) as caught:
            vouch_second(required, BO, wrong)
        said = caught.value
        assert (said.field, said.why, said.what_to_do) == (
            FIELD, "It is not that of Bo Second.", "Let Bo Second type it again.",
        )  # fmt: skip


def test_it_proves_that_person_alone_and_for_that_deed_alone(required: Office) -> None:
    deeds = deeds_of(required)
    proved = vouch_second(required, BO, BOS)
    assert "Cy Third" in refused(deeds["strike"], proved, CY).why
    stated = vouch_second(replace(required, vouched=False), BO, BOS)
    for name, deed in deeds.items():
        assert "Ada Officer has not given one" in refused(deed, stated, BO).why, name
    assert not seat(proved, ADA).vouches_for(seat(proved, BO).officer)
    deeds["strike"](proved, BO)
    assert refused(deeds["release vehicle"], required, BO).field == FIELD


def test_nobody_proves_both_names(required: Office) -> None:
    assert second_asked(required, ADA) is None
    assert vouch_second(required, ADA, ADAS) is required
    for name, deed in deeds_of(required).items():
        assert "cannot be both names" in refused(deed, required, ADA).why, name


def test_where_they_are_only_wanted_nobody_is_asked_and_the_ledger_says_nothing_of_it(required: Office) -> None:
    assert form_facts(required).seconds_prove
    set_wish(required, Passphrases.WANTED)
    assert not form_facts(required).seconds_prove and second_asked(required, BO) is None
    assert vouch_second(required, BO, "a wrong one entirely") is required
    for name, deed in deeds_of(required).items():
        deed(required, BO)
        assert "Proved" not in told_ledger(required, last=1)[0].sentence, name


def test_a_second_name_that_is_not_needed_is_proved_too_or_left_out(required: Office) -> None:
    renewed = (DI, "strap", required.today + timedelta(days=400))
    named = refused(lambda desk, second: renew_competence(desk, *renewed, Widening(WHY, second)), required, BO)
    assert named.field == FIELD
    renew_competence(required, *renewed, Widening(WHY))


def test_one_s_own_gear_is_passed_where_both_gave_theirs_and_kept_on_hold_where_the_second_one_is_typed(
    required: Office,
) -> None:
    kind = book_in(required, replace(strap("KS-9", owner=ADA), serial="Z9-009")).dossier.kind
    facts = replace(all_good(required, kind, STRAP_READINGS), second=BO)
    assert record_inspection(required, "KS-9", facts).verdict.outcome is Outcome.HOLD
    assert "none was given here for: Bo Second" in passes_nothing(required, "KS-9", facts)[0]
    assert "Proved" not in told_ledger(required, last=1)[0].sentence
    proved = vouch_second(required, BO, BOS)
    assert preview_verdict(proved, open_item(proved, "KS-9").dossier, facts).verdict.outcome is Outcome.FIT
    assert record_inspection(proved, "KS-9", facts).verdict.outcome is Outcome.FIT
    assert passes_nothing(proved, "KS-9", facts) == ()
    assert "Proved by passphrase: Ada Officer and Bo Second." in told_ledger(required, last=1)[0].sentence


def test_a_second_name_that_was_proved_opens_nothing_to_a_first_one_that_was_not(required: Office) -> None:
    kind = book_in(required, replace(strap("KS-9", owner=ADA), serial="Z9-009")).dossier.kind
    stated = vouch_second(replace(required, vouched=False), BO, BOS)
    facts = replace(all_good(stated, kind, STRAP_READINGS), second=BO)
    assert record_inspection(stated, "KS-9", facts).verdict.outcome is Outcome.HOLD
    assert told_ledger(required, last=1)[0].sentence.endswith(" Proved by passphrase: Bo Second.")


def test_one_who_is_not_there_is_refused_by_the_name_of_its_field(required: Office) -> None:
    with pytest.raises(Refused, match="second name: Nobody called"):
        vouch_second(required, "No Body", BOS)


def test_a_specimen_of_a_withdrawal_asks_nobody(wanted: Office) -> None:
    fit(wanted, shackle(), SHACKLE_READINGS)
    set_passphrase(wanted, add(wanted, BO).id, BOS)
    set_wish(wanted, Passphrases.REQUIRED)
    lend(wanted, ("SH-1",), member(wanted).id, wanted.today + timedelta(days=7))
    sort = next(one for one in SORTS if one.key == "recall-withdrawal")
    assert len(list(sort.printed(wanted))) == 1

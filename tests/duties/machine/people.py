"""Who is who, what each may judge, who is at the desk; copies of the register, and who it passes to."""

from datetime import timedelta

from hypothesis import strategies as st
from hypothesis.stateful import rule

from inspector.duties.add_people import add_person
from inspector.duties.back_up import back_up
from inspector.duties.change_person import (
    Widening,
    change_person,
    end_competence,
    give_competence,
    renew_competence,
)
from inspector.duties.hand_over import hand_over
from inspector.duties.keep_contact import remove_contact, write_contact
from inspector.duties.keep_passphrases import remove_passphrase, set_passphrase, set_wish, vouch
from inspector.gear.person import Competence, Passphrases, Person
from tests.duties.machine.club import MEMBER, OFFICER, SECOND
from tests.duties.machine.desk import Desk
from tests.duties.machine.pieces import PEOPLE

SECRET = "seven grey gulls on a post"


class People(Desk):
    """People come, and what they may judge changes: no verdict gets milder by that."""

    @rule(name=st.sampled_from((SECOND, "Cy New", "", MEMBER)), scope=st.sampled_from(("all", "shackle", "rockets")))
    def add_person(self, name: str, scope: str) -> None:
        """A person is written into the register once."""
        held = (Competence(scope, self.office.today),)
        self._quietly(
            "add person", lambda: self.do("add person", lambda office: add_person(office, Person("", name, "", held)))
        )

    @rule(name=PEOPLE, role=st.sampled_from(("rigger", "trainer")))
    def change_role(self, name: str, role: str) -> None:
        """A person's role is another one."""
        self._quietly(
            "change person",
            lambda: self.do("change person", lambda office: change_person(office, name, role=role, why="asked")),
        )

    @rule(name=PEOPLE, second=st.sampled_from(("", SECOND)), days=st.sampled_from((0, -9, 9)))
    def give(self, name: str, second: str, days: int) -> None:
        """A person may judge another family of kinds from today on."""
        given = Competence("winch", self.office.today + timedelta(days))
        ground = Widening("passed the course", second, "certificate 12" if days < 0 else "")
        self._quietly(
            "give competence",
            lambda: self.do("give competence", lambda office: give_competence(office, name, given, ground)),
        )

    @rule(name=PEOPLE, days=st.sampled_from((30, 400)))
    def renew(self, name: str, days: int) -> None:
        """What a person may judge is renewed, once it has an end."""
        self.end(name)
        until, ground = self.office.today + timedelta(days), Widening("passed again", SECOND)
        self._quietly(
            "renew competence",
            lambda: self.do("renew competence", lambda office: renew_competence(office, name, "winch", until, ground)),
        )

    @rule(name=PEOPLE)
    def end(self, name: str) -> None:
        """What a person may judge ends."""
        self.give(name, SECOND, 0)
        self._quietly(
            "end competence",
            lambda: self.do("end competence", lambda office: end_competence(office, name, "winch", "moved away")),
        )

    @rule(name=PEOPLE, phone=st.sampled_from(("555 0101", "555 0102", "")))
    def contact(self, name: str, phone: str) -> None:
        """How to reach a person is written down, or taken out."""
        if phone:
            self.do("write contact", lambda office: write_contact(office, name, phone=phone))
        else:
            self.do("remove contact", lambda office: remove_contact(office, name))

    @rule(
        name=st.sampled_from((OFFICER, SECOND)), wish=st.sampled_from((None, None, Passphrases.OFF, Passphrases.WANTED))
    )
    def passphrases(self, name: str, wish: Passphrases | None) -> None:
        """Passphrases are set and taken out, and wished for by the club."""
        if wish is not None:
            self.do("set passphrase rule", lambda office: set_wish(office, wish))
            return
        self.do("set passphrase rule", lambda office: set_wish(office, Passphrases.WANTED))
        if self.do("set passphrase", lambda office: set_passphrase(office, OFFICER, SECRET)):
            proved = vouch(self.office, SECRET)
            self.do("set passphrase", lambda _: set_passphrase(proved, name, SECRET))
            self.do("remove passphrase", lambda _: remove_passphrase(proved, OFFICER))

    @rule(to=st.sampled_from((SECOND, OFFICER)), copies=st.booleans())
    def hand_over(self, to: str, copies: bool) -> None:
        """The register is copied, or passes to another officer with a copy."""
        before, folder = self.line(), self.folder / f"copies-{self.deeds}"
        if copies:
            self.do("back up", lambda office: back_up(office, folder))
        else:
            self.do("hand over", lambda office: hand_over(office, to, folder), lambda _: self.line() - before)

    def _quietly(self, name: str, change: object) -> None:
        before = dict(self.stood)
        change()  # type: ignore[operator]
        assert self.stood == before, f"{name} changed a verdict"

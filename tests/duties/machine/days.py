"""Days pass, and the club changes its rulebook."""

from hypothesis import strategies as st
from hypothesis.stateful import rule

from inspector.duties.adopt_rulebook import adopt_rulebook, drop_rulebook
from inspector.duties.found_club import found_club
from inspector.duties.judge_anew import judge_anew
from inspector.duties.rulebook_in_force import judge_under_new_book
from tests.duties.machine.desk import Desk

HEAD = b'club = "Test Club"\ntitle = "Ours"\nfrom = 2026-11-25\nwhy = "agreed"\n'
BOOKS = {
    "loose": HEAD + b'profile = ["shackle-wear-ten-percent"]\n',
    "tight": HEAD + b'[[limit]]\nrule = "shackle-body-worn"\nlimit = "3 %"\n',
    "faulty": HEAD + b'[[limit]]\nrule = "no-such-rule"\nlimit = "3 %"\n',
}


class Days(Desk):
    """The clock and the rulebook."""

    @rule(days=st.sampled_from((1, 1, 7, 100, 400)))
    def wait(self, days: int) -> None:
        """Days pass and the program is opened: by waiting alone nothing gets milder."""
        before, book = dict(self.stood), self.office.rules.hash
        self.clock.wait(days)
        self.open_anew()
        self.do("rulebook in force", judge_under_new_book, lambda judged: min(len(judged), 1))
        self.do("judge anew", judge_anew, lambda judged: min(len(judged), 1))
        if self.office.rules.hash == book:
            milder = {tag for tag, was in before.items() if self.stood[tag].severity < was.severity}
            assert milder == set(), f"{milder} got milder by waiting"

    @rule(name=st.sampled_from(sorted(BOOKS)), retires=st.sampled_from((0, 0, 1)))
    def adopt(self, name: str, retires: int) -> None:
        """The club adopts limits of its own."""
        self.do(
            "adopt rulebook",
            lambda office: adopt_rulebook(office, BOOKS[name], "ours.toml", office.today, retires),
        )
        self.open_anew()

    @rule(sure=st.integers(0, 9))
    def drop(self, sure: int) -> None:
        """The club goes back to the packaged limits."""
        if sure:
            return
        self.do("drop rulebook", drop_rulebook)
        self.open_anew()

    @rule(sure=st.integers(0, 9))
    def found_again(self, sure: int) -> None:
        """A register is begun once."""
        if sure:
            return
        assert self.do("found club", lambda office: found_club(office, "Another Club", "Cy New")) is None

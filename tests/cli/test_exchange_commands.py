"""The commands for lists, archives and the signing key, as they are typed."""

from pathlib import Path

import pytest

from inspector.duties.machine_settings import MachineSettings
from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk
from tests.register.archives import MAIL, SECRET


@pytest.fixture
def desk(tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Desk:
    """A register with one piece, on a machine whose settings lie in the test's folder."""
    monkeypatch.setenv("COLUMNS", "100")
    monkeypatch.setenv("INSPECTOR_KEY_PASSPHRASE", SECRET)
    monkeypatch.setattr("inspector.app._machine", lambda: MachineSettings(tmp_path / "settings" / "window.json"))
    made = Desk(tmp_path / "club", capsys)
    made.type("begin", "--club", "Test Club", "--officer", "Ada Officer")
    made.type("book", "SH-1", *SHACKLE, *SIZES)
    made.type("inspect", "SH-1", *GOOD)
    made.type("contact", "write", "Ada Officer", "--mail", MAIL)
    return made


def words(said: str) -> str:
    """What was said, in one line."""
    return " ".join(said.split())


def test_lists_are_written_by_the_ending_of_their_name(desk: Desk, tmp_path: Path) -> None:
    assert "1 row in" in desk.type("export", str(tmp_path / "gear.csv"), "bow", "--outcome", "fit")
    assert "2 rows in" in desk.type("export", str(tmp_path / "read.csv"), "--what", "readings")
    assert "rows in" in desk.type("export", str(tmp_path / "all.xlsx"))
    assert "all.schema.json" in desk.type("export", str(tmp_path / "all.jsonl"))
    assert "stays as it is" in desk.type("export", str(tmp_path / "gear.csv"), code=2)
    assert "Leave the words" in desk.type("export", str(tmp_path / "b.jsonl"), "bow", code=2)
    assert "says by no ending" in desk.type("export", str(tmp_path / "gear"), code=2)


def test_an_archive_is_written_looked_through_and_opened(desk: Desk, tmp_path: Path) -> None:
    file = str(tmp_path / "a.zip")
    said = words(desk.type("archive", file))
    assert "Contact details and passphrases are not in it." in said
    assert MAIL.encode() not in Path(file).read_bytes()
    assert "stays as it is" in desk.type("archive", file, code=2)
    found = words(desk.type("verify-archive", file))
    assert found.endswith("The archive is as it was written.") and "It is not signed" in found
    assert "1 fault found." in desk.type("verify-archive", file, "--head", "0123456789ab", code=1)
    assert "holds a register already" in desk.type("open-archive", file, code=2)
    other = Desk(tmp_path / "other", desk._capture)
    assert "as it was in the archive" in words(other.type("open-archive", file))
    assert "SH-1" in other.type("list") and "Nothing was changed." in other.type("verify")
    assert "opened the register from the archive a.zip" in words(other.type("ledger", "--last", "1"))
    assert "wrote the archive a.zip" in words(desk.type("ledger", "--last", "1"))
    assert "give it to nobody" in words(desk.type("archive", str(tmp_path / "b.zip"), "--with-contacts"))


def test_the_key_is_made_shown_and_signs(desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert "has no signing key" in desk.type("key")
    assert "Make one first" in desk.type("archive", str(tmp_path / "a.zip"), "--sign", code=2)
    made = desk.type("key", "new")
    assert "BEGIN PUBLIC KEY" in made and "PRIVATE" not in made and "and no more" in words(made)
    shown = desk.type("key")
    fingerprint = next(line for line in made.splitlines() if len(line.split()) == 8 and len(line) == 71)
    assert fingerprint in shown and "entered by Ada Officer" in shown
    assert fingerprint in Path(desk.type("key", "paper", str(tmp_path / "key.txt")).strip()).read_text("utf-8")
    signed = words(desk.type("archive", str(tmp_path / "a.zip"), "--sign"))
    assert fingerprint in signed
    found = words(desk.type("verify-archive", str(tmp_path / "a.zip"), "--key", fingerprint))
    assert "This register knows the key: entered by Ada Officer" in found
    assert "has a signing key already" in desk.type("key", "new", code=2)
    monkeypatch.setenv("INSPECTOR_KEY_PASSPHRASE", "quite another one")
    assert "If it is lost, make a new key" in words(desk.type("archive", str(tmp_path / "b.zip"), "--sign", code=2))
    assert "The register knows this key" in desk.type("key", "new", "--instead")
    monkeypatch.setenv("INSPECTOR_KEY_PASSPHRASE", "")
    assert "None was typed" in desk.type("archive", str(tmp_path / "b.zip"), "--sign", code=2)


def test_a_register_that_does_not_know_the_key_of_the_machine_is_told_it(desk: Desk, tmp_path: Path) -> None:
    desk.type("key", "new")
    other = Desk(tmp_path / "other", desk._capture)
    other.type("begin", "--club", "Other Club", "--officer", "Bo Other")
    assert "`inspector key enter` enters it" in words(other.type("key"))
    assert "The register knows this key" in other.type("key", "enter")
    assert "Nothing is to do" in other.type("key", "enter", code=2)


def test_a_signed_bundle_is_written_and_checked(desk: Desk, tmp_path: Path) -> None:
    desk.type("key", "new")
    desk.type("incident", "report", "--what", "The pin bent.", "--place", "Long Sand", "--piece", "SH-1", "--near-miss")
    ref = desk.type("incident", "list").splitlines()[1].split()[0]
    said = words(desk.type("incident", "bundle", ref, "--to", str(tmp_path / "bundle"), "--sign"))
    assert "Signed with the key" in said and "and no more" in said
    assert (tmp_path / "bundle" / "verify.py").exists()
    assert "Nothing was changed." in desk.type("incident", "check", str(tmp_path / "bundle"))
    (tmp_path / "bundle" / "manifest.sig").write_bytes(b"x" * 64)
    assert "manifest.sig: It does not fit" in words(desk.type("incident", "check", str(tmp_path / "bundle"), code=1))

"""The server that the tests start: on loopback alone, no superuser of the machine's, gone at the end, missed aloud."""

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest
from sqlalchemy import create_engine

from tests import once
from tests import server as run_server
from tests.server import NoServerError, Server


def test_it_listens_on_loopback_alone_and_owns_nothing_of_root(server: Server) -> None:
    engine = create_engine(server.url())
    with engine.connect() as connection:
        assert connection.exec_driver_sql("SHOW listen_addresses").scalar_one() == "127.0.0.1"
        assert connection.exec_driver_sql("SHOW unix_socket_directories").scalar_one() == ""
        folder = Path(str(connection.exec_driver_sql("SHOW data_directory").scalar_one()))
    engine.dispose()
    assert folder.is_relative_to(tempfile.gettempdir())
    if os.name != "nt":
        assert folder.stat().st_uid != 0


def test_without_a_server_the_reason_is_told(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(run_server, "_places", lambda: iter([tmp_path]))
    with pytest.raises(NoServerError, match="apt-get install -y postgresql"):
        run_server.start(tmp_path / "server")
    assert not (tmp_path / "server").exists()


def test_who_comes_after_a_worker_that_could_not_start_it_is_told_the_same(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv(once.FOLDER, str(tmp_path))
    monkeypatch.setattr(run_server, "_places", lambda: iter([tmp_path]))
    for _ in range(2):
        with pytest.raises(NoServerError, match="apt-get install -y postgresql"):
            run_server.server_of_the_run()
        monkeypatch.setattr(run_server, "start", lambda _: pytest.fail("it is tried once a run"))


def test_what_a_killed_run_left_is_stopped_by_the_next(monkeypatch: pytest.MonkeyPatch) -> None:
    ended = subprocess.run([sys.executable, "-c", "import os; print(os.getpid())"], capture_output=True, check=True)
    folder = Path(tempfile.mkdtemp(prefix=f"{once.MADE}{int(ended.stdout)}-"))
    for place in (folder, folder / "server"):
        place.mkdir(exist_ok=True)
        place.chmod(0o711)
    left = run_server.start(folder / "server" / "server")
    run_server._stop_what_killed_runs_left()
    assert not folder.exists()
    with pytest.raises(Exception, match="refused"):
        left.order("SELECT 1")
    shutil.rmtree(folder, ignore_errors=True)

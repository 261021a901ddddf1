"""A private PostgreSQL server for one run of the tests: on loopback alone, in a temporary folder, stopped at the end.

One server serves every worker of a run: whoever needs it first starts it, the process that began the run stops it,
whatever became of the tests. A run that was killed cannot; what it left behind is stopped when the next run begins.
Its settings are quick, not safe: without fsync a power cut would spoil it, and nothing in it outlives the run.
"""

import json
import os
import secrets
import shutil
import socket
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from msgspec import Struct
from sqlalchemy import URL, create_engine, text

from tests import once

HOST = "127.0.0.1"
_NAME = "server"  # of its folder in that of the run
_ADMIN = "postgres"
_NEEDED = ("initdb", "pg_ctl", "postgres")
_QUICK = ("fsync=off", "synchronous_commit=off", "full_page_writes=off", "wal_level=minimal", "max_wal_senders=0")
_PLACED = (f"listen_addresses={HOST}", "unix_socket_directories=", "max_connections=60", "jit=off")
_PATIENCE_S = 60


class NoServerError(Exception):
    """No server can be had; the reason is for whoever runs the tests."""


class Server(Struct, frozen=True):
    """A running server and the password of its superuser."""

    port: int
    password: str

    def url(self, database: str = _ADMIN, login: str = _ADMIN, password: str = "") -> str:
        """The address of a database on it, for the superuser unless another login is named."""
        made = URL.create("postgresql+psycopg", login, password or self.password, HOST, self.port, database)
        return made.render_as_string(hide_password=False)

    def order(self, *statements: str) -> None:
        """Let the superuser do something outside any transaction."""
        engine = create_engine(self.url(), isolation_level="AUTOCOMMIT")
        with engine.connect() as connection:
            for statement in statements:
                connection.execute(text(statement))
        engine.dispose()

    @contextmanager
    def database(self) -> Iterator["Database"]:
        """An empty database of an owner of its own who is no superuser; dropped afterwards."""
        made = Database(self, f"t{secrets.token_hex(4)}", secrets.token_hex(8))
        self.order(
            f"CREATE ROLE {made.owner} LOGIN CREATEROLE PASSWORD '{made.password}'",
            f"CREATE DATABASE {made.name} OWNER {made.owner} TEMPLATE template0 ENCODING 'UTF8' LOCALE 'C'",
        )
        try:
            yield made
        finally:
            self.order(f"DROP DATABASE {made.name} WITH (FORCE)")


class Database(Struct, frozen=True):
    """One database on the server."""

    server: Server
    name: str
    password: str  # the owner's

    @property
    def owner(self) -> str:
        """The login whose tables they are."""
        return f"{self.name}_owner"

    @property
    def url(self) -> str:
        """The address for its owner."""
        return self.as_login(self.owner, self.password)

    @property
    def superuser_url(self) -> str:
        """The address for the server's superuser, whom no policy holds."""
        return self.server.url(self.name)

    def as_login(self, login: str, password: str) -> str:
        """The address for another login."""
        return self.server.url(self.name, login, password)


def server_of_the_run() -> Server:
    """The server of this run, started where no worker has yet. Raises NoServerError where none can be had."""
    try:
        return Server(*json.loads(once.once(_NAME, _started)))
    except once.NotMadeError as reason:
        raise NoServerError(str(reason)) from reason


def _started(place: Path) -> str:
    place.chmod(0o711)  # the server's own user must get through
    server = start(place / "server")
    return json.dumps([server.port, server.password])


def begin_run() -> None:
    """Make the place of this run for all of its workers; nothing is started yet. What killed runs left goes."""
    _stop_what_killed_runs_left()
    once.begin_run()


def end_run() -> None:
    """Stop this run's server where one was started, and remove the place of the run."""
    if once.FOLDER in os.environ:
        stop(Path(os.environ[once.FOLDER]) / _NAME / "server")
    once.end_run()


def _stop_what_killed_runs_left() -> None:
    for folder in once.killed_runs():
        stop(folder / _NAME / "server")
        shutil.rmtree(folder, ignore_errors=True)


# --- the server itself ---


def programs() -> Path:
    """The folder with the server's programs: on the path, where packages put them, or where pg_config says."""
    for folder in _places():
        if all(shutil.which(name, path=str(folder)) for name in _NEEDED):
            return folder
    raise NoServerError(
        "No PostgreSQL server is installed: initdb, pg_ctl and postgres are neither on the path nor in"
        " /usr/lib/postgresql/*/bin nor in /usr/local/bin. Install one (Debian: apt-get install -y postgresql)."
    )


def _places() -> Iterator[Path]:
    if found := shutil.which("initdb"):
        yield Path(found).resolve().parent
    packaged = Path("/usr/lib/postgresql").glob("[0-9]*/bin")
    yield from sorted(packaged, key=lambda folder: int(folder.parent.name.split(".")[0]), reverse=True)
    yield Path("/usr/local/bin")
    yield Path("/usr/local/pgsql/bin")
    if config := shutil.which("pg_config"):
        yield Path(subprocess.run([config, "--bindir"], capture_output=True, text=True, check=True).stdout.strip())


def start(folder: Path, *, quick: bool = True) -> Server:
    """Make a server in this folder and start it on a free port of loopback. quick: it need not outlive a power cut."""
    bin_ = programs()
    folder.mkdir(mode=0o700)
    password = secrets.token_hex(16)
    (folder / "password").write_text(password, encoding="utf-8")
    if whose := _whose():
        for one in (folder, folder / "password"):
            os.chown(one, whose["user"], whose["group"])
    how = ("--auth=scram-sha-256", f"--pwfile={folder / 'password'}", "--encoding=UTF8", "--locale=C", "--no-sync")
    _run(folder, str(bin_ / "initdb"), "-D", str(folder / "data"), "-U", _ADMIN, *how)
    for further in (2, 1, 0):
        server = Server(_free_port(), password)
        try:
            _start_on(bin_, folder, server.port, _QUICK if quick else ())
            break
        except NoServerError:  # somebody else may have taken the port meanwhile
            if not further:
                raise
    return server


def _start_on(bin_: Path, folder: Path, port: int, quick: tuple[str, ...]) -> None:
    said = " ".join(f"-c {setting}" for setting in (*quick, *_PLACED, f"port={port}"))
    how = ("-w", "-t", str(_PATIENCE_S), "-o", said, "-l", str(folder / "log"))
    _run(folder, str(bin_ / "pg_ctl"), "start", "-D", str(folder / "data"), *how)


def stop(folder: Path) -> None:
    """Stop the server in this folder, if one is there."""
    if (folder / "data" / "postmaster.pid").exists():
        with suppress(NoServerError):
            _run(folder, str(programs() / "pg_ctl"), "stop", "-D", str(folder / "data"), "-m", "immediate", "-w")


def _free_port() -> int:
    with socket.socket() as one:
        one.bind((HOST, 0))
        return int(one.getsockname()[1])


def _whose() -> dict[str, Any]:
    """Whose process the server is: it refuses to run as root, so root lets another user run it."""
    if os.name == "nt" or os.geteuid() != 0:
        return {}
    import pwd

    known = {entry.pw_name: entry for entry in pwd.getpwall()}
    entry = next((known[name] for name in (_ADMIN, "nobody") if name in known), None)
    if entry is None:
        raise NoServerError(
            "The PostgreSQL server refuses to run as root, and there is no user “postgres” or “nobody”."
        )
    return {"user": entry.pw_uid, "group": entry.pw_gid, "extra_groups": ()}


def _run(folder: Path, *command: str) -> None:
    with (folder.parent / "said").open("w+", encoding="utf-8") as said:  # a pipe would stay open with the server
        done = subprocess.run(command, cwd=folder, stdout=said, stderr=said, check=False, **_whose())
        said.seek(0)
        if done.returncode:
            log = folder / "log"
            more = log.read_text(encoding="utf-8", errors="replace")[-2000:] if log.exists() else ""
            raise NoServerError(f"The PostgreSQL server could not be run: {Path(command[0]).name}: {said.read()}{more}")

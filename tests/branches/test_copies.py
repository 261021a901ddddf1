"""A copy of all branches by the server's own tools, as the README tells it, and put back under another name."""

import os
import shutil
import subprocess
from pathlib import Path

from inspector.duties.server_logins import logins, make_roles
from inspector.gear.seats import Role
from inspector.register.book import open_book
from tests.branches.federation import PASSWORD, Federation
from tests.server import HOST, Server, programs


def tool(server: Server, name: str, *words: str, login: str, password: str) -> str:
    """What a tool of the server's complains of; empty where it did all of it."""
    found = shutil.which(name, path=os.pathsep.join((str(programs()), os.environ["PATH"])))
    assert found, f"{name} is not installed beside the server"
    said = [found, "-h", HOST, "-p", str(server.port), "-U", login, *words]
    secret = {**os.environ, "PGPASSWORD": password}
    done = subprocess.run(said, env=secret, capture_output=True, text=True, check=False)
    assert (done.returncode == 0) == (done.stderr == ""), done.stderr
    return done.stderr


def test_a_dump_holds_every_branch_with_its_guards(federation: Federation, server: Server, tmp_path: Path) -> None:
    here, file = federation.database, str(tmp_path / "clubs.dump")
    dump = ("pg_dump", "-Fc", "-Z0", "-f", file, here.name)
    owner = tool(server, *dump, login=here.owner, password=here.password)
    assert "row-level security" in owner  # whom the policies bind cannot copy all of it, and is told so
    assert tool(server, *dump, login="postgres", password=server.password) == ""
    again = f"{here.name}_again"
    server.order(f"CREATE DATABASE {again} OWNER {here.owner} TEMPLATE template0 ENCODING 'UTF8' LOCALE 'C'")
    try:
        assert tool(server, "pg_restore", "-d", again, file, login="postgres", password=server.password) == ""
        there = server.url(again, here.owner, here.password)
        assert make_roles(there) == tuple(Role)
        assert {one.login for one in logins(there)} == {one.login for one in logins(here.url)}
        for branch in ("kite", "wren"):
            book = open_book(server.url(again, federation.login(f"{branch}_officer"), PASSWORD))
            with book.reading() as page:
                assert page.piece_count() > 100
                assert branch == "wren" or page.verify().faults == ()
            book.close()
    finally:
        server.order(f"DROP DATABASE {again} WITH (FORCE)")

"""What the server itself holds a member's login to: it adds checks before use, and they only make a verdict stricter.

Grants say which tables a member may add to (`seats.py`); the policies in the SQL beside this file say which rows, and
its triggers hold that no verdict of a member's is milder than the one that stands, that a line of the ledger follows
from the last one, and that a line names every row. The sentences of a verdict are the program's: a server cannot judge.
"""

from importlib.resources import files

from sqlalchemy import Connection, text

from inspector.register.branches import schema_of

MAY_ADD = ("inspection", "opinion", "verdict", "attachment", "attachment_data", "ledger")
MAY_CHANGE = ("standing",)


def ensure_member_laws(connection: Connection) -> None:
    """Set every law anew; runs after each migration in the same transaction."""
    laws = (files("inspector") / "register" / "member_laws.sql").read_text(encoding="utf-8")
    as_it_stands = {"no_parameters": True}  # several statements at once, and % as itself
    connection.exec_driver_sql(laws.replace("{schema}", schema_of(connection)), execution_options=as_it_stands)


def laws_gone(connection: Connection) -> list[str]:
    """The names of triggers and policies for members that should stand and do not."""
    triggers = "SELECT tgname FROM pg_trigger WHERE NOT tgisinternal AND tgenabled <> 'D'"
    policies = "SELECT polrelid::regclass || '_policy' FROM pg_policy WHERE polname = 'of_members'"
    present = set(connection.execute(text(f"{triggers} UNION ALL {policies}")).scalars())
    return [name for name in _names() if name not in present]


def _names() -> list[str]:
    judged = [f"{name}_of_members" for name in ("verdict", "standing", "ledger")]
    named = [f"{name}_named" for name in MAY_ADD if name != "ledger"]
    return [*judged, *named, *(f"{name}_policy" for name in MAY_ADD if name != "verdict")]

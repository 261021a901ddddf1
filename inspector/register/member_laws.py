"""What the server itself holds a member's login to: it adds checks before use, and they only make a verdict stricter.

Grants say which tables a member may add to (`seats.py`); the policies in the SQL beside this file say which rows, and
its triggers hold that no verdict of a member's is milder than the one that stands, that a line of the ledger follows
from the last one, and that a line names every row. The sentences of a verdict are the program's: a server cannot judge.
"""

from importlib.resources import files

from sqlalchemy import Connection

from inspector.register.branches import schema_of

MAY_ADD = ("inspection", "opinion", "verdict", "attachment", "attachment_data", "ledger")
MAY_CHANGE = ("standing",)


def ensure_member_laws(connection: Connection) -> None:
    """Set every law anew; runs after each migration in the same transaction."""
    laws = (files("inspector") / "register" / "member_laws.sql").read_text(encoding="utf-8")
    as_it_stands = {"no_parameters": True}  # several statements at once, and % as itself
    connection.exec_driver_sql(laws.replace("{schema}", schema_of(connection)), execution_options=as_it_stands)

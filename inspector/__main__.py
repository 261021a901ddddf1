"""The command `inspector`, and `python -m inspector`."""

import gc
import sys

from inspector import SELDOM


def process() -> int:
    """Run the command that this process was started for; returns its exit code, and the process is to end with it."""
    gc.set_threshold(SELDOM)
    from inspector.app import main  # after that: what it imports stays as well

    code = main()
    if "PySide6" not in sys.modules:
        gc.freeze()  # all that was opened is closed; looking for rubbish among what was imported would only take time
    return code


if __name__ == "__main__":
    sys.exit(process())

"""`python -m tests.benchmarks.measuring.child WORK FOLDER TOLD`: one work on a folder's register; `turns.py` begins it.

Nothing of the program is imported before a work asks for it, since importing is part of what is measured.
"""

import sys

from tests.benchmarks.measuring.child import windows, works

if __name__ == "__main__":
    {**windows.WORKS, **works.WORKS}[sys.argv[1]](sys.argv[2])

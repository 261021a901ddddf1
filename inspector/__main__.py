"""`python -m inspector` is the command `inspector`."""

import sys

from inspector.app import process

if __name__ == "__main__":
    sys.exit(process())

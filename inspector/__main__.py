"""`python -m inspector` is the command `inspector`."""

import sys

from inspector.app import main

if __name__ == "__main__":
    sys.exit(main())

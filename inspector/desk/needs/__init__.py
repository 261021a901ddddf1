"""What needs the officer, and what falls due: the window's first page and its calendar."""

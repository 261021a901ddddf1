"""The whole register as one file that another copy of the program can open, and anybody can check."""

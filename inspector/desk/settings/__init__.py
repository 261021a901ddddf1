"""What can be set: how the window looks on this machine, and what the club wants of figures and papers."""

"""What the rulebook says, and the limits that the club sets otherwise."""

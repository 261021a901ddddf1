"""The place of the register itself: copies, handing on, the ledger as sentences, what the gear is worth."""

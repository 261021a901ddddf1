"""The place of the vehicles: who they are, what sits on them."""

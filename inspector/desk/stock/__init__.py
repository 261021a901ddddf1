"""The count: what is there, what is not, and what nobody looked for."""

"""The law as data, and the engine that reads it. Judging returns data; wording makes the sentences."""

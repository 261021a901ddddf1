"""The parts of the gear list's page: its columns, filters, deeds for several pieces, and what the worker fetches."""

"""Counts the outside values: each test of tests/published names its source and what it checks; the report adds up."""

from collections import Counter

import pytest

from tests.each import case_count

_MARK = "printed"


def pytest_configure(config: pytest.Config) -> None:
    """The mark: printed(source, *functions, values=1), functions as "module.function" of inspector.mechanics."""
    config.addinivalue_line("markers", "printed(source, *functions, values=1): outside values this test checks")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Hand the marks to the report, also from a worker process; each case a test goes through holds its values."""
    for item in items:
        for mark in item.iter_markers(_MARK):
            cases = case_count(getattr(item, "function", None))
            item.user_properties.append((_MARK, (mark.args[0], mark.kwargs.get("values", 1) * cases)))


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """The count of outside values by source, of tests that passed."""
    counts: Counter[str] = Counter()
    for report in terminalreporter.stats.get("passed", []):
        for name, found in getattr(report, "user_properties", []):
            if name == _MARK:
                counts[found[0]] += int(found[1])
    if counts:
        terminalreporter.section("outside values by source")
        for source, count in sorted(counts.items()):
            terminalreporter.write_line(f"{count:5}  {source}")
        terminalreporter.write_line(f"{sum(counts.values()):5}  values from {len(counts)} sources")

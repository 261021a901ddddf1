"""The benchmarks run and print figures; what they measure is not judged here."""

from tests.benchmarks.bench_sums import CASES, measure


def test_the_bench_of_sums_measures_every_case_against_its_baseline() -> None:
    rows = measure(calls=20)
    assert [name for name, _, _ in rows] == list(CASES)
    assert rows[0][2] == 1 and all(taken > 0 for _, taken, _ in rows)

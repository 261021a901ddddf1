"""All that is measured, in the order of the table."""

from tests.benchmarks.measuring import benched, growth, judging, starting
from tests.benchmarks.measuring.run import Part

PARTS = (
    Part("program start to first paint", starting.to_first_paint),
    Part("program start to the list's first rows, usable", starting.to_first_rows),
    Part("`inspector list` from cold", starting.command),
    Part("judge all, cold", judging.all_from_cold),
    Part("after one inspection is logged: judge, store, show", judging.one),
    Part("open on a new day", judging.new_day),
    Part("find as one types", benched.finding),
    Part("pre-trip sheet", benched.sheet),
    Part("retirement notices", benched.notices),
    Part("import of rows: dry run and real", benched.bringing_in),
    Part("photo read back, a page", benched.photos),
    Part("growth: judge all, list, due list, verify", growth.growth),
    Part("PostgreSQL: several writers at once", benched.writers),
)

"""A rig's account at the command line says of a part what the picture and the sheet say of it."""

import pytest
from msgspec.structs import replace

from inspector.cli import rig_account
from inspector.drawings.rig_words import used_text
from inspector.units import System
from tests.drawings.rigs import link, plain


@pytest.mark.parametrize(("stands", "used"), [(100.0, "19 %"), (99.9, "20 %"), (96.0, "20 %"), (18.9, "101 %")])
def test_the_use_of_a_part_is_rounded_toward_the_limit_as_on_paper(
    stands: float, used: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """19 kN of 100 are 19 %, of 99.9 kN a hair more, of 18.9 kN more than all of it."""
    part = link("HR-13", "hitch_receiver", 19, stands, 1.0)
    rig_account.result(replace(plain(), links=(part,), weakest="HR-13"), System.METRIC)
    (row,) = (line for line in capsys.readouterr().out.splitlines() if line.startswith("HR-13"))
    assert used in row and used_text(part) == used

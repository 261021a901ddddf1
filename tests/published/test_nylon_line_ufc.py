"""Stiffness of double braid nylon line, against UFC 4-159-03 (Moorings, 3 Oct 2005) table 6-8, every row.

Mean breaking strength Fb in kips, AE in kips and in 1e5 N, single line. AE is 3.54 Fb in every row but one, whose kips
contradict the newtons beside them. The last digit is cut off in some rows; in one it shows that 3.54 is itself rounded
(3.5398 = 1 / 0.2825 gives every digit of the table).
"""

import pytest

from inspector.mechanics import strap_stiffness
from tests.each import each
from tests.printed import printed

KIP_N = 4448.2216152605

ROWS = [
    *((33.6, "118.9", "5.29"), (45, "159.3", "7.09"), (52, "184.1", "8.19"), (59, "208.8", "9.29")),
    *((74, "261.9", "11.65"), (91, "322.1", "14.33"), (131, "463.7", "20.63"), (153, "541.6", "24.09")),
    *((177, "626.5", "27.87"), (202, "715.0", "31.81"), (230, "814.2", "36.22"), (257, "909.7", "40.47")),
    *((285, "1008.8", "44.88"), (322, "1139.8", "50.70"), (384, "1359.3", "60.46"), (451, "1596.5", "71.01")),
    *((599, "2120.4", "94.32"), (680, "2407.1", "107.07")),
]


@pytest.mark.printed("UFC 4-159-03 table 6-8", "strap_stiffness.nylon_axial_n", values=2)
@each(("breaking_kips", "ae_kips", "ae_100_kn"), ROWS)
def test_stiffness_of_double_braid_nylon(breaking_kips: float, ae_kips: str, ae_100_kn: str) -> None:
    ae_n = strap_stiffness.nylon_axial_n(breaking_kips * KIP_N)
    assert ae_n / KIP_N == printed(ae_kips, cut_off=True)
    assert ae_n / 1e5 == printed(ae_100_kn, cut_off=True)


@pytest.mark.printed("UFC 4-159-03 table 6-8", "strap_stiffness.nylon_axial_n", values=2)
def test_the_row_in_which_the_rounding_of_the_factor_shows() -> None:
    ae_n = strap_stiffness.nylon_axial_n(523 * KIP_N)
    assert ae_n / KIP_N == pytest.approx(1851.3, rel=1e-4)
    assert ae_n / 1e5 == printed("82.35", cut_off=True)


@pytest.mark.printed("UFC 4-159-03 table 6-8", "strap_stiffness.nylon_axial_n", values=2)
def test_the_slip_in_the_row_of_110_kips_is_not_followed() -> None:
    ae_n = strap_stiffness.nylon_axial_n(110 * KIP_N)
    assert ae_n / 1e5 == printed("17.32")
    assert ae_n / KIP_N != pytest.approx(417.0, abs=20)

"""Ammonia against tables that other people printed; species/sources.yml says where each was read."""

import pytest

from calculators.science.water.ammonia import (
    acute_limit_mg_n_l,
    chronic_limit_mg_n_l,
    unionised_share,
)

# Fundamentals of Aquatic Veterinary Medicine, table 1.4, calculated from Emerson and others 1975.
DEGREES = (6, 10, 14, 18, 20, 24, 28, 30)
# At pH 7.4 and 20 °C the copy prints 0.0096, out of line with both its neighbours: left out.
EMERSON = {
    7.0: (0.0013, 0.0018, 0.0025, 0.0034, 0.0039, 0.0052, 0.0069, 0.0080),
    7.4: (0.0034, 0.0046, 0.0063, 0.0085, None, 0.0131, 0.0173, 0.0198),
    8.0: (0.0133, 0.0182, 0.0247, 0.0330, 0.0381, 0.0502, 0.0654, 0.0743),
    8.4: (0.0328, 0.0445, 0.0597, 0.0790, 0.0904, 0.1171, 0.1495, 0.1678),
    8.6: (0.0510, 0.0688, 0.0914, 0.1197, 0.1361, 0.1737, 0.2178, None),
}
# Trussell 1972, percent, as a maker of test kits reprints it: older constants, so within 3 %.
TRUSSELL = {
    10: {7.0: 0.19, 7.5: 0.59, 8.0: 1.83, 8.5: 5.55},
    15: {7.0: 0.27, 7.5: 0.85, 8.0: 2.65, 8.5: 7.98},
    20: {7.0: 0.40, 7.5: 1.24, 8.0: 3.83, 8.5: 11.18},
    25: {7.0: 0.55, 7.5: 1.73, 8.0: 5.28, 8.5: 14.97},
}
# Oregon's tables 30(A) and (C), which take over the US criteria of 2013, at pH 6.5, 7.0 .. 9.0.
ACIDITY = (6.5, 7.0, 7.5, 8.0, 8.5, 9.0)
ACUTE = {
    10: (33, 24, 13, 5.6, 2.1, 0.88),
    20: (23, 17, 9.2, 3.9, 1.5, 0.62),
    30: (9.9, 7.3, 4.0, 1.7, 0.65, 0.27),
}
CHRONIC = {
    5: (4.9, 4.4, 3.2, 1.8, 0.80, 0.36),
    20: (2.1, 1.9, 1.4, 0.78, 0.35, 0.16),
    30: (1.1, 0.99, 0.73, 0.41, 0.18, 0.081),
}


@pytest.mark.parametrize("ph", EMERSON)
def test_the_share_is_that_of_the_printed_table(ph):
    """To its last digit, and half a percent for the offset of absolute zero, 273.2 or 273.15."""
    for degrees, share in zip(DEGREES, EMERSON[ph], strict=True):
        if share is not None:
            assert unionised_share(ph, degrees) == pytest.approx(share, abs=1e-4, rel=0.006), (
                degrees
            )


@pytest.mark.parametrize("degrees", TRUSSELL)
def test_the_share_is_near_an_older_table(degrees):
    for ph, percent in TRUSSELL[degrees].items():
        found = 100 * unionised_share(ph, degrees)
        assert found == pytest.approx(percent, abs=0.006, rel=0.03), ph


def to_two_figures(value):
    return float(f"{value:.2g}")


@pytest.mark.parametrize("degrees", ACUTE)
def test_the_acute_limit_is_that_of_the_printed_table(degrees):
    found = [to_two_figures(acute_limit_mg_n_l(ph, degrees)) for ph in ACIDITY]
    assert found == pytest.approx(list(ACUTE[degrees]))


@pytest.mark.parametrize("degrees", CHRONIC)
def test_the_chronic_limit_is_that_of_the_printed_table(degrees):
    found = [to_two_figures(chronic_limit_mg_n_l(ph, degrees)) for ph in ACIDITY]
    assert found == pytest.approx(list(CHRONIC[degrees]))

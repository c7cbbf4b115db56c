"""The tests that a problem's own words ask for, without those whose reading was given already."""

import re
from collections.abc import Collection

from calculators.core.wording import joined
from calculators.science.animals.reading_steps import TAPS_NITRATE, TESTS

# What records call a reading, by its key.
NAMED = {**TESTS, "nitrate_mg_l": "nitrate", "phosphate_mg_l": "phosphate", "gh_dh": "GH"}
KEYS = {name: key for key, name in NAMED.items()} | {"the tap": TAPS_NITRATE}
ONE = rf"(?:{'|'.join(sorted(KEYS, key=len, reverse=True))})"
ASKS = re.compile(
    r"(?P<before> and)?(?P<ask> ?\b(?:[Tt]est|[Rr]ead)) "
    rf"(?P<list>{ONE}(?:, {ONE})* and {ONE})(?P<after>[.;:]| to be sure)"
)


def without_given(action: str, given: Collection[str]) -> str:
    """An action in words that asks for no reading twice; those ``given`` are keys.

    Where every reading of a list was given and the words go on from it, they stay as they are.
    """

    def left(found: re.Match[str]) -> str:
        names = re.split(", | and ", found["list"])
        wanted = [name for name in names if KEYS.get(name) not in given]
        before, after = found["before"] or "", found["after"]
        if wanted:
            return f"{before}{found['ask']} {joined(wanted)}{after}"
        return after if before and after in ".;" else found[0]

    return ASKS.sub(left, action)

"""The one table of readings that harm or kill, for every calculator, problem and page.

A line is where the band begins: at or beyond it the reading is harmful, or deadly. Lines hold for
the mixed fish, shrimp and snails of a planted tank, cool or warm, and lie on the animals' side: a
line is no promise for a given kind. Nitrite's are those of water with hardly any chloride.
Ammonia, and nitrite beside a known chloride, stand in ``toxic_lines.py``: they need other readings.
"""

from typing import Literal, NamedTuple

Level = Literal["in-range", "harmful", "deadly"]
Side = Literal["", "low", "high"]
Edge = Literal["deadly_low", "harmful_low", "harmful_high", "deadly_high"]


class ReadingLines(NamedTuple):
    """Where a reading begins to harm and to kill, on either side; None where that side does not.

    ``source`` (of the harmful lines) and ``deadly_source`` are keys of the bibliography, or
    ``common-practice``.
    """

    deadly_low: float | None
    harmful_low: float | None
    harmful_high: float | None
    deadly_high: float | None
    source: str
    deadly_source: str = ""


class Standing(NamedTuple):
    """How one reading stands: the band, and the side on which it lies outside."""

    level: Level
    side: Side


LINES: dict[str, ReadingLines] = {
    # A shrimp (Caridina nilotica) lives ever shorter below 10 and above 30 °C, and is active from
    # 11 to 32. Guppies die in time a little above 32 (gibson-1954), mollies at 10.8 to 11.8 °C
    # (hernandez-2010). 16 and 30 °C are common practice: unheated tanks stand at 17 °C for months.
    "temperature_c": ReadingLines(12, 16, 30, 33, "common-practice", "hart-1983"),
    # pH 5 to 9 kills no fish directly. 4.5 and 9.5: of those reported for perch, 4.6 and 9.5.
    "ph": ReadingLines(4.5, 5.0, 9.0, 9.5, "eifac-1969-ph", "eifac-1969-ph"),
    # 10 mg N/L over a long time; 56.2 mg N/L killed half of an amphipod's in five days (memory).
    "nitrate_mg_l": ReadingLines(None, None, 44, 250, "camargo-2005", "camargo-2005"),
    # One-day minima for warm-water fish: 5 for young, 3 for grown ones (memory).
    "oxygen_mg_l": ReadingLines(
        3, 5, None, None, "epa-1986-dissolved-oxygen", "epa-1986-dissolved-oxygen"
    ),
    # Toxic ammonia, mg N/L: judgement for mixed tanks, inside the span of the US chronic criterion,
    # 0.008 to 0.038 at 25 °C. Half of a water flea died at 0.09 to 0.92 (read in an abstract), half
    # of young Macrobrachium at 1.4 to 2.2 (straus-1991).
    "nh3_mg_n_l": ReadingLines(None, None, 0.02, 0.05, "common-practice", "common-practice"),
    # The most for a short time, at under 2 and at over 10 mg/L of chloride. Guppies died at 9
    # (dolezelova-2011, in water with some chloride).
    "nitrite_mg_n_l": ReadingLines(None, None, 0.06, 0.60, "bc-nitrite", "bc-nitrite"),
    # Shrimp and snails find too little calcium for shell and moult; hard water troubles soft-water fish.
    "gh_dh": ReadingLines(None, 1, 30, None, "common-practice"),
    # With no buffer the pH can fall within days; some soft-water shrimp are kept so on purpose.
    "kh_dh": ReadingLines(None, 0.5, None, None, "common-practice"),
    # Amphipods grew up only at 4.6 and less; 20 killed half of them in four days.
    "copper_ug_l": ReadingLines(None, None, 4.6, 20, "arthur-leonard-1970", "arthur-leonard-1970"),
    # Water fleas bred less at 53 mg/L, and half died within two days at 93 (memory).
    "potassium_mg_l": ReadingLines(
        None, None, 53, 93, "biesinger-christensen-1972", "biesinger-christensen-1972"
    ),
    # United States' criteria over days and over an hour (memory).
    "chloride_mg_l": ReadingLines(None, None, 230, 860, "epa-1988-chloride", "epa-1988-chloride"),
    # No level of phosphate itself was found to kill: superphosphate did not harm fish or snails.
    "phosphate_mg_l": ReadingLines(None, None, None, None, "simplicio-2017"),
}
# What the comments above name besides.
MORE_SOURCES = ("gibson-1954", "hernandez-2010", "dolezelova-2011", "straus-1991")
LINE_SOURCES = (
    tuple(
        dict.fromkeys(
            key
            for reading_line in (*LINES.values(),)
            for key in (reading_line.source, reading_line.deadly_source)
            if key not in ("", "common-practice")
        )
    )
    + MORE_SOURCES
)
IN_RANGE = Standing("in-range", "")


def standing(reading: str, value: float) -> Standing:
    """How a reading stands by its lines.

    Here ``reading`` is a key of ``LINES`` and ``value`` is in its unit. Raises ``KeyError``.
    """
    lines = LINES[reading]
    if lines.deadly_low is not None and value <= lines.deadly_low:
        return Standing("deadly", "low")
    if lines.deadly_high is not None and value >= lines.deadly_high:
        return Standing("deadly", "high")
    if lines.harmful_low is not None and value <= lines.harmful_low:
        return Standing("harmful", "low")
    if lines.harmful_high is not None and value >= lines.harmful_high:
        return Standing("harmful", "high")
    return IN_RANGE


def edge_of(reading: str, edge: Edge) -> float:
    """A line of the table, in the unit of the reading. Raises ``KeyError`` where it has none there."""
    value: float | None = getattr(LINES[reading], edge)
    if value is None:
        raise KeyError(f"{reading} has no line {edge}")
    return value

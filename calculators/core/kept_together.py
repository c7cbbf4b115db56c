"""A number and the sign of its unit stay on one line of a page."""

import re

NO_BREAK = "\u00a0"
# Signs alone; a word such as "days" may go to the next line, and "in" and "a" are mostly no units.
SIGNS = r"%|°[CF]|°dK?H|[mkµμ]?g|m?L|(?:US )?gal|[mckµμ]?m|min|h|s|k?Wh?|lm|lx|hPa|ppm|[mµμ]?mol|meq|[µμ]?S"
BEFORE_UNIT = re.compile(rf"(?<=[\d½]) (?=(?:{SIGNS})(?![A-Za-z]))")
COUNTED_AS = re.compile(rf"(?<=\d{NO_BREAK}mg) (?=[NP]\b)")


def kept_together(text: str) -> str:
    """The text, with spaces that no line ends at where a unit follows its number: "5 mg N/L", "24 °C"."""
    return COUNTED_AS.sub(NO_BREAK, BEFORE_UNIT.sub(NO_BREAK, text))

"""What a constant of the model is, beside its value: read off the annotations for its page."""

from typing import Literal, NamedTuple

Sure = Literal["well-documented", "reported", "uncertain"]  # the three marks of the whole book


class About(NamedTuple):
    """Unit and meaning of a constant, how sure it is, and where it comes from.

    ``origin`` is "judgement" where nobody we found measured it in a tank, and says what is from
    memory; ``source`` is a key of the bibliography.
    """

    unit: str
    what: str
    sure: Sure
    origin: str
    source: str = ""

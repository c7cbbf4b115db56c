"""Whether a grown fish could turn and swim in a tank: by its length and that of a common tank."""

from collections.abc import Sequence

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.science.animals.animal_table import ANIMALS, shown_name
from calculators.science.conversions import MM_PER_DM

LENGTHS_IN_A_TANK = 5.0  # of a grown fish, at least: common practice, no source
TIMES_AS_LONG = 2.0  # a common tank is twice as long as it is wide and high


def common_length_mm(volume_l: float) -> float:
    """How long a tank of so many litres mostly is, mm: twice as long as it is wide and high."""
    width_dm: float = (volume_l / TIMES_AS_LONG) ** (1 / 3)
    return TIMES_AS_LONG * width_dm * MM_PER_DM


def room_notes(kinds: Sequence[str], volume_l: float) -> list[Note]:
    """A word on each kind of fish that outgrows a tank of so many litres, whatever its load."""
    length_mm = common_length_mm(volume_l)
    return [
        Note("caution", outgrown(kind, volume_l, length_mm), True)
        for kind in kinds
        if ANIMALS[kind].group == "fish"
        and ANIMALS[kind].longest_mm * LENGTHS_IN_A_TANK > length_mm
    ]


def outgrown(kind: str, volume_l: float, length_mm: float) -> str:
    """What to do about a fish that grows too long for the tank."""
    return (
        f"{shown_name(kind)} grows to about {show_number(ANIMALS[kind].longest_mm)} mm, and "
        f"{show_number(volume_l)} L mostly make a tank of some {round(length_mm, -1):.0f} mm: too short for "
        "a grown one to turn and swim (common practice, no source). Look up the room it needs before you "
        "buy. For one that lives there already plan a larger tank, and release it nowhere."
    )

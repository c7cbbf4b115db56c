"""A change of water that another reading asks for where ammonia shows too: one sentence for both.

Ammonia decides how water may be changed, and the other reading how much of it: nitrite that kills is
not left in for a trace of ammonia, nor is ammonia turned toxic for the sake of nitrite.
"""

from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.wording import upper
from calculators.science.water.change_choice import ChangeOutcome, Choice
from calculators.science.water.change_words import (
    ASK_AGAIN,
    BIND,
    CALM,
    LIKE_THE_TANK,
    SAME_KH_AND_PH,
    sentence,
)
from calculators.science.water.first_change import hardness_jump
from calculators.science.water.hardness_gap import gaps_between
from calculators.science.water.water_mix import Water


class AskedChange(NamedTuple):
    """What asks for a change beside ammonia, for how much in percent and in words, and how to go on.

    ``again`` is the end of the sentence, with its comma and without a full stop; empty for once.
    ``killer`` names the reading where it kills by itself.
    """

    reading: str
    percent: float
    share: str
    again: str
    killer: str = ""


def sentence_for_both(
    choice: Choice, tank: Water, tap: Water, change: ChangeOutcome, asked: AskedChange | None
) -> str:
    """The advice on ammonia, with the change that another reading asks for as far as this tap allows it.

    ``change`` is one that is spoken of. Where ammonia asks for a change itself, that one is made.
    """
    if asked is None or choice.way in ("change-now", "change-slowly", "read-again"):
        return sentence(choice, tank, tap, change)
    if choice.way == "nothing":
        most = min(asked.percent, choice.largest_percent)
        jump = hardness_jump(most, gaps_between(tank, tap), asked.killer)
        return f"{jump} {little_toxic(choice, asked)}".strip()
    then = f"change {asked.share} of the water with new water of {SAME_KH_AND_PH}{asked.again}."
    when = "Once it is bound, " if choice.way == "bind-first" else f"{asks_too(asked)}: "
    return f"{sentence(choice, tank, tap, change)} {when}{then}"


def little_toxic(choice: Choice, asked: AskedChange) -> str:
    """The change for the other reading where ammonia by itself asks for none."""
    if choice.largest_percent >= asked.percent:
        return (
            f"Change {asked.share} of the water now with {LIKE_THE_TANK}{asked.again}: "
            f"{asked.reading} {verb(asked)} for it. Little of the ammonia is toxic, and such a change leaves "
            f"it so. {CALM} Test ammonia before each change."
        )
    if choice.largest_percent > 0:
        return (
            f"Change {show_number(choice.largest_percent)} % of the water now, slowly, with {LIKE_THE_TANK}, "
            f"and no more at a time: {asked.reading} {verb(asked)} for {asked.share}, but so much of this "
            f"tap would make ammonia toxic. {CALM} {ASK_AGAIN} With new water of {SAME_KH_AND_PH} "
            f"{asked.share} may be changed."
        )
    return (
        f"Do not change with this tap: it would make the ammonia toxic. {CALM} {asks_too(asked)}: make new "
        f"water of {SAME_KH_AND_PH}, the tap mixed with purified water, and change {asked.share} of the "
        f"water with it{asked.again}. Until it is ready, {BIND}."
    )


def asks_too(asked: AskedChange) -> str:
    """That the other reading asks for a change as well, without a full stop."""
    return f"{upper(asked.reading)} {verb(asked)} for a change too"


def verb(asked: AskedChange) -> str:
    """Whether one reading asks, or two ask."""
    return "ask" if " and " in asked.reading else "asks"

"""What the water-change calculator says: animals first, then the plan, then how to carry it out."""

import math
from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.core.wording import CHANGE_WITH_CARE, TESTED_TAP
from calculators.science.animals.reading_steps import SHARES
from calculators.science.water.ammonia import chronic_limit_mg_n_l
from calculators.science.water.careful_change import IN_ACID_WATER, WaterForChange
from calculators.science.water.nitrate_of_tap import RICH_TAP
from calculators.science.water.unread import EXAMPLE_PH, EXAMPLE_TEMPERATURE_C
from calculators.water_change.gentle_change import begin_gently, gentle_step, leaps, unread
from calculators.water_change.targets import TARGETS, Substance, level_of

LARGE_CHANGE_PERCENT = 50  # common practice, no source: above it, match the new water with care
# Where ammonia counts as dangerous, as long as its own calculator has not been asked; our judgement.
NAMES: dict[Substance, str] = {
    "nitrate": "Nitrate",
    "nitrite": "Nitrite",
    "ammonia": "Ammonia",
    "phosphate": "Phosphate",
    "copper": "Copper",
    "other": "A reading",
}
HELP: dict[Substance, tuple[Link, ...]] = {
    "nitrate": (Link("What else lowers nitrate", "problems/high-nitrate/"),),
    "nitrite": (Link("What else helps against nitrite", "problems/nitrite-emergency/"),),
    "copper": (Link("What else helps against copper", "problems/copper-poisoning/"),),
}
DEADLY = {
    "nitrate": "A tank that reads so high was mostly left for long, and its pH and carbonate hardness may "
    "have fallen: test both in tank and new water, and refill slowly, over an hour or more.",
    "nitrite": "Stop feeding and add air. Shrimps, young and long-finned fish suffer first.",
    "copper": "Take out what brings it, and move shrimps and snails to clean water of the same kind.",
}


HARMFUL = {
    "nitrate": "Sensitive ones suffer over weeks: feed less where food is left, and test the tap.",
    "nitrite": "Stop feeding, add air, and look for what stopped or starved the filter.",
    "copper": "Look for what brings it: a medicine, a plant food, a pipe. Shrimps and snails suffer first.",
}


class ChangePart(NamedTuple):
    """What animals bear at a time where a reading can kill, in percent, in words, and how far apart."""

    percent: float
    words: str
    apart: str


# Common practice, no source. Animals are used to a nitrate that rose for months, and such a tank is
# soft and acid: what its standing says of it, a quarter a day, holds here too.
PARTS: dict[Substance, ChangePart] = {
    "nitrate": ChangePart(*SHARES["quarter"], "a day"),
    "nitrite": ChangePart(*SHARES["third"], "half a day"),
}
OTHER_PART = ChangePart(*SHARES["third"], "some hours")


class Planned(NamedTuple):
    """A plan of changes: how many, the share of each in percent, days between, from and to in mg/L."""

    what: Substance
    changes: int
    each_percent: float
    wait_days: float
    now: float
    target: float


def ammonia_first(mg_l: float | None = None) -> tuple[Link, ...]:
    """The link to the calculator that knows when a change makes ammonia worse."""
    given: dict[str, float | str] = {} if mg_l is None else {"ammonia_mg_l": mg_l}
    return (Link("How to change water when ammonia shows", "calculators/ammonia-change/", given),)


def first(
    what: Substance, now: float, given: float | None, tap: float | None, water: WaterForChange
) -> list[Note]:
    """What must be read before any plan: a deadly reading, ammonia, a target that is harmful itself.

    The readings ``now``, ``given`` as the target and of the ``tap`` are in mg/L. ``water`` says how much of
    a change this tank bears.
    """
    notes = []
    if level_of(what, now) == "deadly":
        with_what = (
            ""
            if tap is None or (tap < now and level_of(what, tap) != "deadly")
            else ", with other water than this"
        )
        gently = gentle_step(what, now, part_of(what).percent, water)
        change = (
            f"Where a test shows no ammonia, make the first change now{with_what}, of no more than about "
            f"{part_of(what).words}, and the rest in steps."
        )
        # One step is said: a smaller one for the hardness, or what such a reading allows at a time.
        careful = gently if leaps(water) else f"{TEST_FIRST} {gently}"
        steps = careful if gently else change
        text = f"{NAMES[what]} of {show_number(now)} mg/L can kill. {steps} {DEADLY[what]}"
        notes.append(Note("danger", text, True, HELP[what]))
    elif what in HARMFUL and level_of(what, now) == "harmful":
        text = f"{NAMES[what]} of {show_number(now)} mg/L harms animals. {HARMFUL[what]}"
        notes.append(Note("caution", text, True))
    if what == "ammonia" and now > 0:
        text = (
            "A change can make ammonia more toxic where the tank's pH is below that of the new water. "
            "Do not change water by these figures: they count the total alone. Put both pH readings "
            "into the calculator for ammonia first, stop feeding and add air."
        )
        limit = chronic_limit_mg_n_l(EXAMPLE_PH, EXAMPLE_TEMPERATURE_C)
        notes.append(Note("danger" if now >= limit else "caution", text, True, ammonia_first(now)))
    if tap is not None and what != "ammonia" and level_of(what, tap) == "deadly":
        text = f"The new water itself reads {show_number(tap)} mg/L, which can kill: do not use it."
        notes.append(Note("danger", text, True))
    if given is not None and level_of(what, given) != "in-range":
        text = (
            f"The reading you want, {show_number(given)} mg/L, is itself above what animals bear over "
            f"time. {TARGETS[what].why}"
        )
        notes.append(Note("caution", text, True))
    elif given is None and TARGETS[what].target is not None:
        notes.append(Note("info", f"Target taken: {TARGETS[what].why}"))
    return notes


def no_target(what: Substance, now: float) -> list[Note]:
    """No plan, since nobody has said what reading to reach. The reading ``now`` is in mg/L."""
    links = ammonia_first(now) if what == "ammonia" else ()
    return [Note("caution", f"No change is worked out. {TARGETS[what].why}", True, links)]


def nothing_to_do(what: Substance, now: float, tap: float) -> list[Note]:
    """The reading is at or below the target already.

    The readings ``now`` and of the ``tap`` are in mg/L.
    """
    notes = []
    if level_of(what, now) == "in-range":
        taken = "" if what == "other" else f", taken as {NAMES[what].lower()},"
        text = f"The reading{taken} is not above the target: no change is needed for it."
        notes.append(Note("info", text, True))
    else:
        text = "The reading is not above the target you entered, but animals need it lower still."
        notes.append(Note("caution", text, True))
    if tap > now:
        notes.append(
            Note("caution", "The new water reads higher than the tank and would raise it.")
        )
    return notes


def out_of_reach(tap: float, target: float) -> list[Note]:
    """The new water itself does not read below the target.

    Both ``tap`` and ``target`` are in mg/L.
    """
    why = (
        f"Changes with this water can never reach the target: it reads {show_number(tap)} mg/L itself, "
        f"and the target is {show_number(target)} mg/L. Mix in water that reads lower, or let plants "
        "do it."
    )
    return [Note("caution", why, True), TESTED_TAP]


def no_plan(
    what: Substance,
    now: float,
    changes: int,
    most: int,
    largest: float,
    reach: float,
    water: WaterForChange,
) -> list[Note]:
    """So many changes are no plan; what the most of them would come to.

    The ``largest`` is in percent of the water, and they lead from ``now`` to so many mg/L, ``reach``. What of
    a change this ``water`` bears is said here too, and no larger one is asked for where it bears none.
    """
    deadly = level_of(what, now) == "deadly"
    step = gentle_step(what, now, largest, water)
    larger = "" if step or deadly or largest >= part_of(what).percent else "allow a larger change, "
    why = (
        f"{changes} changes of {show_number(largest, 2)} % would be needed, which is no plan: more than "
        f"about {most} changes, or four weeks of them, is longer than anybody keeps it up and than the "
        f"figures hold (common practice). {most} such changes lead to about {show_number(reach, 2)} mg/L. "
        f"Use new water that reads lower, {larger}or find what brings it in."
    )
    return [
        *begin_gently("" if deadly else step, "caution"),
        Note("caution", why, True),
        *unread(water),
        *([] if what == "ammonia" else [AMMONIA_TOO]),
        CHANGE_WITH_CARE,
        TESTED_TAP,
    ]


def plan_notes(plan: Planned, tap: float | None, water: WaterForChange) -> list[Note]:
    """The plan in plain words, and what to know before and between the changes.

    The reading of the ``tap`` is in mg/L, None where it was not tested. What of a change this ``water``
    bears stands before the plan, unless the note on what kills has said it.
    """
    level = level_of(plan.what, plan.now)
    gently = gentle_step(plan.what, plan.now, plan.each_percent, water)
    step = "" if level == "deadly" else gently
    notes = [*begin_gently(step, "caution"), verdict(plan), *unread(water)]
    if gently:
        notes.append(DILUTION_ALONE)
    acts = level == "deadly" or (plan.what == "nitrite" and level != "in-range")
    most = part_of(plan.what).percent + 1 if acts else LARGE_CHANGE_PERCENT
    if plan.each_percent > most and not gently:
        notes.append(in_parts(plan, acts))
    if tap is None:
        notes.append(untested(plan.what))
    if plan.what != "ammonia":
        notes.append(AMMONIA_TOO)
    if plan.what == "nitrite":
        notes.append(Note("info", RICH_TAP))
    if plan.changes > 1:
        notes.append(between(plan))
    return [*notes, CHANGE_WITH_CARE, *([TESTED_TAP] if not tap else [])]


def verdict(plan: Planned) -> Note:
    """The answer in plain words."""
    so_many = "One change" if plan.changes == 1 else f"{plan.changes} changes"
    text = f"{so_many} of {show_number(plan.each_percent, 2)} %"
    text += " each" if plan.changes > 1 else ""
    text += (
        " would bring" if plan.what == "ammonia" else " bring" if plan.changes > 1 else " brings"
    )
    text += f" it from {show_number(plan.now)} to {show_number(plan.target)} mg/L"
    if plan.changes > 1:
        text += f", {days_in_words(plan.wait_days)} apart at least"
    return Note("info", f"{text}.", True)


def in_parts(plan: Planned, acts: bool) -> Note:
    """A large change: in smaller ones, nearer together where the reading asks for a step now."""
    part = part_of(plan.what) if acts else OTHER_PART
    left = 1 - min(plan.each_percent, 95) / 100
    parts = math.ceil(math.log(left) / math.log(1 - part.percent / 100))
    percent = show_number(plan.each_percent, 2)
    text = (
        f"{percent} % at once shifts temperature, pH and hardness, most in soft water left long. "
    )
    if acts:
        text += f"Take it in {parts} changes of {part.words}, {part.apart} apart, instead."
    else:
        text += f"{parts} changes of a third on different days do nearly the same and are gentler."
    return Note("caution", text, acts)


def part_of(what: Substance) -> ChangePart:
    """What animals bear at a time where so much of a substance can kill."""
    return PARTS.get(what, OTHER_PART)


def untested(what: Substance) -> Note:
    """The new water was not tested."""
    name = "it" if what == "other" else what
    text = (
        f"You have not entered what the new water reads, so it is taken to hold no {name}. If it holds "
        "any, these changes do less: test it."
    )
    return Note("caution", text)


DILUTION_ALONE = Note(
    "caution",
    "The plan counts dilution alone, and so does its number of changes. Begin as said above, and go on in "
    "such small steps: it takes more of them.",
)
TEST_FIRST = "Test ammonia first: where it shows, ask its own calculator before any change."
AMMONIA_TOO = Note(
    "caution",
    "If a test shows ammonia too, do not change yet: in a tank whose pH is below that of the new water "
    f"a change makes ammonia more toxic. Work that out first. {IN_ACID_WATER}",
    False,
    ammonia_first(),
)


def between(plan: Planned) -> Note:
    """How long to wait, and what happens meanwhile."""
    made = {
        "nitrate": "Feed and soil make nitrate meanwhile, so the last figure may come out higher.",
        "nitrite": "Ammonia goes on turning into nitrite meanwhile: feed nothing or little.",
        "copper": "Copper comes back out of soil and stones meanwhile.",
        "phosphate": "Feed and soil give off phosphate meanwhile.",
    }.get(plan.what, "More of it may come in meanwhile.")
    wait = days_in_words(plan.wait_days)
    text = (
        f"Wait at least {wait} between changes (common practice, no source), so that animals follow. "
        f"{made} Test again before each change: the tank may be there already, or the plan too short."
    )
    return Note("info", text)


def days_in_words(days: float) -> str:
    """How long to wait: half a day, a day or so many."""
    return {0.5: "half a day", 1: "a day"}.get(days, f"{show_number(days, 2)} days")

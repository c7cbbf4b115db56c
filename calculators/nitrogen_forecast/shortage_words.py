"""When the plants run short and when they have enough again, in words that follow the run."""

from calculators.science.nitrogen.hunger import Hunger, Spell


def shortage(hunger: Hunger, days: float) -> str:
    """All spells of hunger in a sentence or two; empty where there was none."""
    if not hunger.spells:
        return ""
    first, last = hunger.spells[0], hunger.spells[-1]
    if last.end is not None:
        return f"{over(hunger.spells)} {healthy(hunger)}"
    if first is last:
        return (
            f"Running short: from about day {first.start:.0f} the store of {names(first.names)} is "
            f"below the line at which leaves brown, and it does not come back within {days:.0f} "
            "days. Feed and tap do not bring what the plants use."
        )
    return (
        f"Running short again: {over(hunger.spells[:-1], 'before')} From about day {last.start:.0f} "
        f"to the last day, {days:.0f}, the store of {names(last.names)} is below the line at which "
        "leaves brown."
    )


def over(spells: list[Spell], when: str = "in between") -> str:
    """Spells that ended: one with its days, more with the first and the last of them."""
    first, last = spells[0], spells[-1]
    end = first.end or 0.0
    if end - first.start < 1:
        text = f"{names(first.names)} ran short for less than a day, about day {first.start:.0f}."
    else:
        text = f"{names(first.names)} ran short about day {first.start:.0f}"
        text += f" and had enough again from day {end:.0f}."
    if len(spells) == 1:
        return text
    times = "once more" if len(spells) == 2 else f"{len(spells) - 1} times more"
    when_last = f"from day {last.start:.0f} to {last.end or 0:.0f}"
    if (last.end or 0.0) - last.start < 1:
        when_last = f"about day {last.start:.0f}"
    return f"{text} They ran short {times} {when}, at last {when_last}."


def healthy(hunger: Hunger) -> str:
    """Whether new growth is healthy after the last spell."""
    if hunger.healthy_day is None:
        return "New growth is not healthy yet on the last day."
    return f"New growth is healthy by about day {hunger.healthy_day:.0f}."


def names(plants: tuple[str, ...]) -> str:
    """Plants in a sentence, a long list cut short."""
    if len(plants) > 3:
        return f"{', '.join(plants[:2])} and {len(plants) - 2} more"
    return " and ".join(plants) if plants else "the plants"

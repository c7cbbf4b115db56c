"""What the weekly budget says of ammonia, oxygen and hardness at its load."""

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.nitrogen_balance.tank_load import LOW_KH_DH, MUCH_KH_DH_WEEK, Load
from calculators.science.animals.burden_words import in_hours
from calculators.science.nitrogen.filter_load import HOURS_PER_DAY, LEAST_FILM, MOST_FILM


def load_notes(load: Load) -> list[Note]:
    """Too much feed, or much, for this water; empty where no line is reached."""
    if not load.is_heavy and not load.is_overfed:
        return []
    why = " ".join([*ammonia_words(load), *air_words(load)])
    if load.is_overfed:
        text = (
            f"Too much for this water. {why} Animals already in it: halve the feed today, keep the "
            "surface moving day and night, test ammonia every day, and find other homes or a larger "
            "tank for some. No animals yet: plan for far fewer."
        )
        return [Note("danger", text, first=True)]
    text = (
        f"Heavy load. {why} Animals already in it: keep the surface moving, test ammonia each week, and "
        "have a battery air pump ready for a power cut. No animals yet: plan for fewer."
    )
    return [Note("caution", text, first=True)]


def never_so_much(verdict: str, feed_g_week: float, load: Load) -> list[Note]:
    """Feed that would match hungry plants, in g a week, where the water cannot carry its ``load``."""
    if verdict != "running-short" or not load.is_overfed:
        return []
    text = (
        f"Never feed for the plants here: what would match them, {show(feed_g_week, 2)} g a week, is more "
        "than this water can carry, and would kill by ammonia or want of oxygen. Take out fast plants or "
        "floaters, or give a plain nitrate fertiliser as its label says."
    )
    return [Note("danger", text)]


def target_feed_notes(feed_g_week: float, now_g_week: float, load: Load) -> list[Note]:
    """What to say of the feed for a target, in g a week, beside what is fed now; ``load`` is what it asks of
    the water.
    """
    if feed_g_week <= now_g_week:
        return []
    feed = f"{show(feed_g_week, 2)} g a week"
    if load.is_overfed:
        text = (
            f"Never feed for that target: {feed} is more than this water can carry, and would kill by "
            "ammonia or want of oxygen before nitrate gets there. Aim lower, or give a plain nitrate "
            "fertiliser as its label says."
        )
        return [Note("danger", text, first=True)]
    if load.is_heavy:
        why = " ".join([*ammonia_words(load), *air_words(load)])
        text = (
            f"The feed for that target, {feed}, is a heavy load. {why} Keep the surface moving day and "
            "night, and a battery air pump ready for a power cut."
        )
        return [Note("caution", text)]
    return []


def ammonia_words(load: Load) -> list[str]:
    """How soon ammonia harms without a filter, and where it settles with one, if near harm."""
    filter_load, sentences = load.ammonia, []
    if filter_load.harms_within(HOURS_PER_DAY):
        sentences.append(
            f"{show(filter_load.load_mg_n_l_day, 2)} mg of nitrogen a litre and day come in as ammonia; if "
            f"the filter stops, it harms after {in_hours(filter_load.hours_to_harm or 0)}."
        )
    if filter_load.films_may_fail:
        sentences.append(
            f"Even a ripe filter may not keep up, taken as a film of bacteria on {LEAST_FILM:.0f} to "
            f"{MOST_FILM:.0f} times the water's surface."
        )
    return sentences


def air_words(load: Load) -> list[str]:
    """Where oxygen settles by night, as a range."""
    low, high = load.air_high_need, load.air_low_need
    return [
        f"By night oxygen settles near {show(low.moved, 2)} to {show(high.moved, 2)} mg/L with a moving "
        f"surface, {show(low.still, 2)} to {show(high.still, 2)} with a still one."
    ]


def hardness_notes(load: Load, kh_dh: float | None, weeks: float | None) -> list[Note]:
    """How fast carbonate hardness goes, where it goes fast."""
    soon = weeks is not None and weeks < 4
    if load.kh_dh_week < MUCH_KH_DH_WEEK and not soon:
        return []
    text = (
        f"Nitrification uses about {show(load.kh_dh_week, 2)} °dH of carbonate hardness a week, less if "
        "droppings give some of it back."
    )
    if kh_dh is not None and kh_dh <= LOW_KH_DH:
        text += f" At {show(kh_dh)} °dH next to none is left: test pH and ammonia now, raise nothing fast."
    elif weeks is not None:
        text += f" From {show(kh_dh or 0)} °dH that lasts about {show(weeks, 2)} weeks without a change."
    text += " Test KH each week: where it ends, pH falls and the filter stops."
    return [Note("caution", text)]

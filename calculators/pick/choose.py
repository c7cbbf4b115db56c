"""The ranked list: the best, with at least one of each kind that was asked for."""

from collections.abc import Sequence

from calculators.pick.judge import Judged
from calculators.pick.wishes import Wishes


def fitting(judged: Sequence[Judged]) -> list[Judged]:
    """Those with no hard reason against them, best first."""
    return [plant for plant in judged if not plant.out]


def choose(fit: Sequence[Judged], wishes: Wishes) -> list[Judged]:
    """So many of the best; the best of each kind that was asked for comes before a second of any."""
    firsts = [
        next((plant for plant in fit if plant.plant.habit == habit), None)
        for habit in wishes.habits
    ]
    sure = sorted(
        {plant.key: plant for plant in firsts if plant}.values(), key=lambda plant: plant.order
    )
    chosen = sure[: wishes.most_listed]
    chosen_keys = {plant.key for plant in chosen}
    chosen += [plant for plant in fit if plant.key not in chosen_keys][
        : wishes.most_listed - len(chosen)
    ]
    return sorted(chosen, key=lambda plant: plant.order)


def stand_in(
    gone: Judged, fit: Sequence[Judged], taken: set[str], barred: set[str]
) -> Judged | None:
    """The best of the same kind that is neither taken nor barred."""
    return next(
        (
            plant
            for plant in fit
            if plant.plant.habit == gone.plant.habit and plant.key not in taken | barred
        ),
        None,
    )

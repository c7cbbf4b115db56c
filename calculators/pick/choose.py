"""The ranked list: the best, with at least one of each kind that was asked for."""

from collections.abc import Sequence

from calculators.pick.judge import Judged
from calculators.pick.wishes import Wishes


def fitting(judged: Sequence[Judged]) -> list[Judged]:
    """Those with no hard reason against them, best first."""
    return [one for one in judged if not one.out]


def choose(fit: Sequence[Judged], want: Wishes) -> list[Judged]:
    """So many of the best; the best of each kind that was asked for comes before a second of any."""
    firsts = [next((one for one in fit if one.plant.habit == habit), None) for habit in want.habits]
    sure = sorted({one.key: one for one in firsts if one}.values(), key=lambda one: one.order)
    chosen = sure[: want.most_listed]
    kept = {one.key for one in chosen}
    chosen += [one for one in fit if one.key not in kept][: want.most_listed - len(chosen)]
    return sorted(chosen, key=lambda one: one.order)


def stand_in(
    gone: Judged, fit: Sequence[Judged], taken: set[str], barred: set[str]
) -> Judged | None:
    """The best of the same kind that is neither taken nor barred."""
    return next(
        (
            one
            for one in fit
            if one.plant.habit == gone.plant.habit and one.key not in taken | barred
        ),
        None,
    )

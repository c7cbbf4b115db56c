"""The ranked list: the best, with at least one of each kind that was asked for."""

from collections.abc import Sequence

from calculators.pick.judge import Judged
from calculators.pick.wishes import Wishes


def fitting(judged: Sequence[Judged]) -> list[Judged]:
    """Those with no hard reason against them, best first."""
    return [candidate for candidate in judged if not candidate.out]


def choose(fit: Sequence[Judged], wishes: Wishes) -> list[Judged]:
    """So many of the best; the best of each kind that was asked for comes before a second of any."""
    firsts = [
        next((candidate for candidate in fit if candidate.plant.habit == habit), None)
        for habit in wishes.habits
    ]
    by_key = {candidate.key: candidate for candidate in firsts if candidate}
    sure = sorted(by_key.values(), key=lambda candidate: candidate.order)
    chosen = sure[: wishes.most_listed]
    chosen_keys = {candidate.key for candidate in chosen}
    chosen += [candidate for candidate in fit if candidate.key not in chosen_keys][
        : wishes.most_listed - len(chosen)
    ]
    return sorted(chosen, key=lambda candidate: candidate.order)


def stand_in(
    gone: Judged, fit: Sequence[Judged], taken: set[str], barred: set[str]
) -> Judged | None:
    """The best of the same kind that is neither taken nor barred."""
    return next(
        (
            candidate
            for candidate in fit
            if candidate.plant.habit == gone.plant.habit and candidate.key not in taken | barred
        ),
        None,
    )

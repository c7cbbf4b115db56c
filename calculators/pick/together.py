"""A small set of plants that together take so much nitrogen: every set of one to three is tried."""

from collections.abc import Iterator, Sequence
from functools import cache
from itertools import combinations, product
from typing import NamedTuple

from calculators.pick.judge import Judged
from calculators.pick.uptake import NitrogenUptake, uptake
from calculators.pick.wishes import Wishes

STEPS = 10  # areas go by tenths of the surface
MOST_COVER = 5  # tenths that floaters may cover; common practice: half stays open for air and light
MOST_BED = (
    7  # tenths of the floor that may be planted; judgement: animals need room to swim and feed
)
MOST_PLANTS = 3
BEST_OF_A_ROLE = 4  # only the best-suited few of each role are tried
# What a tenth of the tank, and one plant more, cost against points of the mean score; judgement.
POINT_A_STEP, POINTS_A_PLANT = 1.0, 3.0


class Member(NamedTuple):
    """A plant that may be in a set."""

    judged: Judged
    uptake: NitrogenUptake
    minutes: float


class PlantSet(NamedTuple):
    """Plants with their areas in tenths of the surface, and what they take, mg N a day each."""

    members: tuple[Member, ...]
    steps: tuple[int, ...]
    n_mg_day: tuple[float, ...]

    @property
    def total(self) -> float:
        """What all of them take, mg a day."""
        return sum(self.n_mg_day)

    @property
    def worth(self) -> float:
        """Mean score, less a point for each tenth of the tank that it fills and three a plant."""
        return set_score(self.members, self.steps)


def members(fit: Sequence[Judged], wishes: Wishes) -> list[Member]:
    """The best few of each role whose growth is known and whose trimming fits."""
    candidates: list[Member] = []
    for role in ("fast", "steady", "slow"):
        of_role = [
            candidate
            for candidate in (member(each, wishes) for each in fit if each.plant.role == role)
            if candidate
        ]
        candidates += of_role[:BEST_OF_A_ROLE]
    return candidates


def member(judged: Judged, wishes: Wishes) -> Member | None:
    """A plant as a member; what stands in the air is not one, unless it was asked for."""
    light = wishes.surface_mol if judged.plant.habit == "floater" else wishes.dli_mol
    nitrogen_uptake = uptake(judged.plant, light)
    minutes = judged.minutes_week
    if nitrogen_uptake is None or nitrogen_uptake.mg_day_cm2 <= 0:
        return None
    if judged.plant.habit == "marginal" and "marginal" not in wishes.habits:
        return None
    if minutes is None and wishes.minutes_week is not None:
        return None
    return Member(judged, nitrogen_uptake, minutes or 0.0)


def sets(choice: Sequence[Member], wishes: Wishes) -> Iterator[tuple[Member, ...]]:
    """Every set that the minutes allow: one floater at most, and fast with slower where both are there."""
    roles = {member.judged.plant.role == "fast" for member in choice}
    for size in range(max(1, len(roles)), MOST_PLANTS + 1):
        for combination in combinations(choice, size):
            if sum(member.uptake.floats for member in combination) > 1:
                continue
            if {member.judged.plant.role == "fast" for member in combination} != roles:
                continue
            if (
                wishes.minutes_week is None
                or sum(m.minutes for m in combination) <= wishes.minutes_week
            ):
                yield combination


@cache
def areas(floats: tuple[bool, ...]) -> tuple[tuple[int, ...], ...]:
    """Every way to give each member at least a tenth, inside the room for beds and for cover; small first.

    Each is a tuple with a number of tenths for every member, in their order.
    """
    choices = [
        range(1, (MOST_COVER if floats_itself else MOST_BED) + 1) for floats_itself in floats
    ]
    ways = (
        way
        for way in product(*choices)
        if sum(step for step, floats_itself in zip(way, floats, strict=True) if not floats_itself)
        <= MOST_BED
    )
    return tuple(sorted(ways, key=lambda way: (sum(way), way)))


def planted(chosen: tuple[Member, ...], steps: tuple[int, ...], cm2: float) -> PlantSet:
    """What a set takes, those on the soil in the shade of those afloat."""
    pairs = list(zip(chosen, steps, strict=True))
    cover = sum(step for each, step in pairs if each.uptake.floats) / STEPS
    taken = tuple(each.uptake.under(cover) * cm2 * step / STEPS for each, step in pairs)
    return PlantSet(chosen, steps, taken)


def best_set(fit: Sequence[Judged], wishes: Wishes, cm2: float) -> tuple[PlantSet | None, float]:
    """The set of most worth that meets the demand; and if none does, the most that any takes, mg a day.

    The worth of a set falls with its area alone, so each set is tried from small to large, and only as
    far as it could still be the best.
    """
    demand = wishes.demand_mg_n_day or 0.0
    best: PlantSet | None = None
    most = 0.0
    for chosen in sets(members(fit, wishes), wishes):
        reach = max(planted(chosen, steps, cm2).total for steps in full(floating(chosen)))
        most = max(most, reach)
        for steps in areas(floating(chosen)) if reach >= demand else ():
            if best is not None and set_score(chosen, steps) <= best.worth:
                break
            candidate = planted(chosen, steps, cm2)
            if candidate.total >= demand:
                best = candidate
                break
    return best, most


@cache
def full(floats: tuple[bool, ...]) -> tuple[tuple[int, ...], ...]:
    """The shares in which one bed has all the room that the others leave, in steps of the room.

    One of them takes the most: for a given shade, what a set takes is linear in its beds. Each is a
    tuple with a number of steps for every member, in their order.
    """
    beds = sum(not floats_now for floats_now in floats)
    return tuple(
        way
        for way in areas(floats)
        if not beds
        or MOST_BED - beds + 1
        in [step for step, floats_now in zip(way, floats, strict=True) if not floats_now]
    )


def floating(chosen: tuple[Member, ...]) -> tuple[bool, ...]:
    """Which members of a set float."""
    return tuple(plant.uptake.floats for plant in chosen)


def set_score(chosen: tuple[Member, ...], steps: tuple[int, ...]) -> float:
    """Mean score, less a point for each tenth of the tank that it fills and three a plant."""
    mean = sum(plant.judged.score for plant in chosen) / len(chosen)
    return mean - POINT_A_STEP * sum(steps) - POINTS_A_PLANT * len(chosen)

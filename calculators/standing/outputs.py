"""What the standing of a tank gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import (
    PH,
    CarbonateHardness,
    Count,
    GeneralHardness,
    Temperature,
    WetMass,
)
from calculators.core.quantity import AsRows, Help, Label, RowsPlace, RowsStyle, Unpainted, WhenNone
from calculators.core.result import Note, Series
from calculators.science.growth.tasks import WeekMinutes, WholeDays
from calculators.science.shelf.shelf_tank import ShelfTank
from calculators.science.shelf.tank_verdict import VERDICT_WORDS, Verdict
from calculators.standing.nitrogen_outlook import Outlook
from calculators.standing.reading_courses import TrendRow


class DueTask(NamedTuple):
    """A task that is due, or will be."""

    task: Annotated[str, Label("Task")]
    on: Annotated[str, Label("On")]
    late_days: Annotated[WholeDays, Label("Late")]
    why: Annotated[str, Label("Why")]
    when: Annotated[str, Label("When")]


class TestWanted(NamedTuple):
    """The reading that tells most next."""

    what: Annotated[str, Label("Reading")]
    why: Annotated[str, Label("Why")]


class PlantLiving(NamedTuple):
    """A kind of plant that is in the tank now."""

    plant: Annotated[str, Label("Plant")]
    wet_g: WetMass | None


class AnimalsLiving(NamedTuple):
    """A kind of animal that is in the tank now."""

    animal: Annotated[str, Label("Animal")]
    count_: Count | None


class LivesNow(NamedTuple):
    """What lives in the tank now, by its lists and its log; None where nothing was ever said."""

    plants: Annotated[list[PlantLiving] | None, Label("Plants")]
    animals: Annotated[list[AnimalsLiving] | None, Label("Animals")]


class WaterNow(NamedTuple):
    """The water as known best: the figures by which ammonia is judged, and its hardness."""

    ph: PH | None
    temperature_c: Temperature | None
    kh_dh: CarbonateHardness | None
    gh_dh: GeneralHardness | None


class TankStanding(NamedTuple):
    """How one tank stands, and what it asks for."""

    verdict: Annotated[Verdict, Label("This tank"), VERDICT_WORDS]
    sentence: Annotated[str, Label("In one sentence"), Unpainted()]
    due: Annotated[
        list[DueTask],
        Label("Due"),
        AsRows(RowsStyle.TABLE, "task", subtitle="why", columns=("when",), place=RowsPlace.FIRST),
    ]
    trends: Annotated[
        list[TrendRow],
        Label("Readings"),
        Help("Ways are between changes of water, in the reading's unit a week."),
        AsRows(RowsStyle.TABLE, "label", columns=("read", "way"), place=RowsPlace.FOLDED),
    ]
    next_test: Annotated[TestWanted | None, Label("Test next"), Unpainted()]
    outlook: Annotated[
        Outlook | None, Label("In four weeks"), Unpainted(), WhenNone("not enough is known")
    ]
    minutes_week: Annotated[WeekMinutes, Label("Minutes a week")]
    lives: Annotated[LivesNow, Label("Lives here"), Unpainted()]
    water: Annotated[WaterNow, Label("Water"), Unpainted()]
    notes: tuple[Note, ...]
    series: dict[str, Series]


def lives_now(tank: ShelfTank) -> LivesNow:
    """What lives in a tank whose lists are those of now."""
    plants, animals = tank.plants, tank.animals
    return LivesNow(
        None if plants is None else [PlantLiving(one.plant, one.wet_g) for one in plants],
        None if animals is None else [AnimalsLiving(one.animal, one.count_) for one in animals],
    )

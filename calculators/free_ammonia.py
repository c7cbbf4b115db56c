"""How much of a total-ammonia reading is toxic."""

from typing import Annotated, Literal, NamedTuple

from calculators.core.declare import calculator
from calculators.core.quantities import (
    PH,
    Concentration,
    Nitrogen,
    Percent,
    Pka,
    Ratio,
    Temperature,
)
from calculators.core.quantity import Choices, Help, Label, Possible, Valid
from calculators.core.result import Line, Note, Series
from calculators.core.wording import FISH_IN_TROUBLE
from calculators.water import chemistry
from calculators.water.ammonia import (
    acute_limit_mg_n_l,
    ammonium_pka,
    chronic_limit_mg_n_l,
    unionised_share,
)

READING_PER_N = {
    "nitrogen": 1.0,
    "ammonium": chemistry.AMMONIUM / chemistry.N,
    "ammonia": chemistry.AMMONIA / chemistry.N,
}
# Working lines for NH3, mg N/L. Our judgement for mixed tanks (common practice, no source): they lie
# inside the span of the chronic criterion, which at 25 °C is 0.008 to 0.038 mg/L as NH3 nitrogen.
WATCH_NH3_MG_N_L = 0.02
ACT_NH3_MG_N_L = 0.05
WATCH_SHARE_OF_CHRONIC = 0.5

Rating = Literal["safe", "watch", "act"]


class FreeAmmonia(NamedTuple):
    """The toxic part of a reading, and the limits beside it."""

    pka: Pka
    unionised_percent: Annotated[Percent, Label("Toxic, un-ionised share")]
    unionised_mg_n_l: Annotated[Nitrogen, Label("Un-ionised ammonia, NH₃")]
    total_mg_n_l: Annotated[Nitrogen, Label("Total ammonia nitrogen")]
    acute_limit_mg_n_l: Annotated[
        Nitrogen, Label("Acute limit, total ammonia nitrogen"), Help("Mean of one hour.")
    ]
    chronic_limit_mg_n_l: Annotated[
        Nitrogen, Label("Chronic limit, total ammonia nitrogen"), Help("Mean of thirty days.")
    ]
    chronic_ratio: Annotated[
        Ratio, Label("Reading against the chronic limit"), Help("1 is at the limit.")
    ]
    rating: Annotated[
        Rating,
        Label("Rating"),
        Choices(
            ("below the working lines", "watch it daily", "act today"),
            levels=("info", "caution", "danger"),
        ),
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]


@calculator("Free ammonia", sources=("emerson-1975", "epa-2013-ammonia", "ciaaw-2021"))
def free_ammonia(
    ammonia_mg_l: Annotated[
        Concentration, Label("Ammonia reading"), Possible(0, 50), Help("The number your kit shows.")
    ] = 0.5,
    reported_as: Annotated[
        Literal["nitrogen", "ammonium", "ammonia"],
        Label("What the kit reports"),
        Choices(("nitrogen, NH₃-N or NH₄-N", "ammonium, NH₄⁺", "ammonia, NH₃")),
        Help("It stands on the kit's card or leaflet."),
    ] = "ammonium",
    ph: Annotated[
        PH,
        Possible(4, 11),
        Valid(6.5, 9.0),
        Help("Measure late in the light period, when it is highest."),
    ] = 7.6,
    temperature_c: Annotated[Temperature, Possible(0, 40), Valid(0, 30)] = 25.0,
) -> FreeAmmonia:
    """Find how much of a total-ammonia reading is the toxic, un-ionised form.

    A kit measures ammonium and ammonia together. Only the un-ionised part, NH₃, passes easily
    through gills; its share grows about tenfold for each unit of pH, and with warmth.

    The share is that of very dilute water. In a tank's harder water the true share is 3 to 9 %
    lower, so the answer errs on the animals' side.

    The limits are the United States' criteria for fresh water with mussels, the acute one in its
    stricter form for trout and salmon. They protect wild communities and are not a promise for a
    given shrimp. The lines for the rating are a working judgement: watch from half the chronic limit or
    0.02 mg/L NH₃ nitrogen, act from the chronic limit or 0.05 mg/L.
    """
    total = ammonia_mg_l / READING_PER_N[reported_as]
    share = unionised_share(ph, temperature_c)
    acute = acute_limit_mg_n_l(ph, temperature_c)
    chronic = chronic_limit_mg_n_l(ph, temperature_c)
    rating = rate(total / chronic, total * share)
    return FreeAmmonia(
        pka=ammonium_pka(temperature_c),
        unionised_percent=100 * share,
        unionised_mg_n_l=total * share,
        total_mg_n_l=total,
        acute_limit_mg_n_l=acute,
        chronic_limit_mg_n_l=chronic,
        chronic_ratio=total / chronic,
        rating=rating,
        notes=tuple(notes(rating, total, acute, ph)),
        series={"unionised_mg_n_l": against_ph(total, temperature_c)},
    )


def rate(chronic_ratio: float, unionised_mg_n_l: float) -> Rating:
    """Rate a reading by the chronic criterion and by our working lines for NH3."""
    if chronic_ratio >= 1 or unionised_mg_n_l >= ACT_NH3_MG_N_L:
        return "act"
    if chronic_ratio >= WATCH_SHARE_OF_CHRONIC or unionised_mg_n_l >= WATCH_NH3_MG_N_L:
        return "watch"
    return "safe"


def notes(rating: Rating, total: float, acute: float, ph: float) -> list[Note]:
    """What the keeper must know beside the figures; animals first."""
    said = []
    if total > acute:
        said.append(Note("danger", "Above the acute limit: animals can die within hours."))
    if rating == "act":
        said += [FISH_IN_TROUBLE, Note("danger", "Do not raise the pH: it turns more of it toxic.")]
    if rating == "watch":
        said.append(Note("caution", "Test daily, feed less, and look for what rots in the tank."))
    if total > 0 and rating == "safe":
        said.append(
            Note(
                "caution",
                "A settled tank reads zero. Any ammonia has a cause: new soil, a dead animal, too "
                "much food, a stopped filter, or tap water with chloramine.",
            )
        )
    if ph < 7 and total > 0:
        said.append(
            Note(
                "caution",
                "At this pH little is toxic now. A water change with harder, higher-pH water can "
                "make the rest toxic within minutes: change in small steps.",
            )
        )
    said.append(
        Note(
            "info",
            "Some water conditioners bind ammonia, and many kits still count what they bind. The "
            "label of the conditioner says so.",
        )
    )
    return said


def against_ph(total_mg_n_l: float, temperature_c: float) -> Series:
    """How the toxic part of this reading would change with pH."""
    steps = [6.0 + 0.1 * step for step in range(31)]
    return Series(
        label="Un-ionised ammonia of this reading",
        unit="mg N/L",
        x_label="pH",
        x_unit="",
        x=steps,
        y=[total_mg_n_l * unionised_share(ph, temperature_c) for ph in steps],
        lines=(Line("test daily", WATCH_NH3_MG_N_L), Line("act", ACT_NH3_MG_N_L)),
    )

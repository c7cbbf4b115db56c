"""Fertiliser salts, or a labelled bottle, to reach a rise in the water."""

from typing import Annotated, Literal, NamedTuple, get_args

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, Part
from calculators.core.quantities import (
    Concentration,
    Density,
    Interval,
    LabelShare,
    Millilitres,
    Percent,
    Ratio,
    SaltMass,
    Strength,
    Volume,
)
from calculators.core.quantity import Choices, Help, Label, Possible, Quantity
from calculators.core.result import Note, Refusal, Refused, Series
from calculators.doses.bottle import bottle_notes, bought, mixed, verdict
from calculators.doses.cautions import Plan, ammonia_notes, level_cautions, rise_cautions
from calculators.doses.labels import Analysis
from calculators.doses.salts import SALTS, Salt
from calculators.doses.settling import Rhythm, course, settle
from calculators.doses.settling_notes import settling_notes

DAYS_A_WEEK = 7
LEAST_DOSE_ML = 0.01
LARGEST_BOTTLE_ML = 25_000

Source = Literal[
    "kno3", "kh2po4", "k2so4", "mgso4_7h2o", "caso4_2h2o", "cacl2_2h2o", "fe_edta", "fe_dtpa",
    "urea", "label",
]  # fmt: skip
SOURCE_WORDS = Choices((
    "potassium nitrate, KNO₃", "potassium dihydrogen phosphate, KH₂PO₄", "potassium sulfate, K₂SO₄",
    "magnesium sulfate, MgSO₄·7H₂O", "gypsum, CaSO₄·2H₂O", "calcium chloride, CaCl₂·2H₂O",
    "iron EDTA", "iron DTPA", "urea", "a labelled bottle",
))  # fmt: skip
Nutrient = Literal["nitrate", "phosphate", "potassium", "magnesium", "calcium", "iron", "nitrogen"]
NUTRIENT_WORDS = Choices((
    "nitrate, NO₃", "phosphate, PO₄", "potassium, K", "magnesium, Mg", "calcium, Ca", "iron, Fe",
    "nitrogen, N",
))  # fmt: skip
Schedule = Literal["once", "daily", "weekly", "after-change"]
DOSE_EVERY_DAYS: dict[str, float] = {"daily": 1.0, "weekly": 7.0}

LABEL = Part("What the label of a bottle prints", closed=True)
OFTEN = Part("How often, and your water changes")


class Dosing(NamedTuple):
    """A dose, the bottle it comes from, and where the level goes; null where it does not apply."""

    grams_per_dose: Annotated[SaltMass | None, Label("Salt for one dose")]
    ml_per_dose: Annotated[Millilitres | None, Label("Of the labelled bottle, for one dose")]
    grams_per_bottle: Annotated[
        SaltMass | None, Label("Salt for the bottle"), Help("Then fill up with water to the mark.")
    ]
    doses_per_bottle: Annotated[Ratio | None, Label("Doses in the bottle")]
    bottle_g_l: Annotated[Strength | None, Label("Strength of the bottle")]
    solubility_g_l: Annotated[
        Strength | None, Label("Dissolves in a litre of water"), Help("At 20 °C, crystals as sold.")
    ]
    most_g_l: Annotated[
        Strength | None,
        Label("Most in a litre bottle"),
        Help("Filled to the mark; less, because the salt takes room itself."),
    ]
    dissolves: Annotated[
        bool | None,
        Label("Within what a litre of water dissolves"),
        Help("Whether it also dissolves in a bottle filled to the mark, the words above say."),
    ]
    least_dose_ml: Annotated[Millilitres | None, Label("Smallest dose volume that dissolves")]
    adds: Annotated[
        dict[str, float | None],
        Quantity("One dose adds", "mg/L", (0, 10_000)),
        Help("Ions as NO₃, PO₄, SO₄ and Cl, the others as the element."),
    ]
    settled_before_change_mg_l: Annotated[
        Concentration | None, Label("Settles at, just before a change")
    ]
    settled_after_change_mg_l: Annotated[
        Concentration | None, Label("Settles at, just after a change"), Help("Before its dose.")
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]


@calculator(
    "Dosing",
    sources=(
        "ciaaw-2021", "handbook-solubility", "phreeqc", "jecfa-1999-fe-edta", "camargo-2005",
        "bc-nitrate-2009", "canada-iron-2019", "epa-1976-iron", "epa-1988-chloride",
        "biesinger-christensen-1972", "epa-2013-ammonia", "emerson-1975", "yang-2008",
        "arthur-leonard-1970", "eu-2019-1148", "gb-precursors-2023",
    ),
)  # fmt: skip
def dosing(
    volume_l: Annotated[Volume, Help("Water in the tank, without soil and stones.")] = 120.0,
    source: Annotated[Source, Label("What you dose"), SOURCE_WORDS] = "kno3",
    nutrient: Annotated[Nutrient, Label("To raise"), NUTRIENT_WORDS] = "nitrate",
    rise_mg_l: Annotated[
        Concentration, Label("Rise by each dose"), Possible(0, 1_000), Help("Of what you raise.")
    ] = 5.0,
    bottle_ml: Annotated[
        Millilitres, Label("Bottle"), Possible(1, LARGEST_BOTTLE_ML), Help("Filled to the mark.")
    ] = 500.0,
    dose_ml: Annotated[
        Millilitres,
        Label("One dose from a bottle you mix"),
        Possible(LEAST_DOSE_ML, LARGEST_BOTTLE_ML),
    ] = 10.0,
    label_n_percent: Annotated[
        LabelShare, Label("Label: nitrogen, N"), Help("0 where the label prints none."), LABEL
    ] = 0.0,
    label_p2o5_percent: Annotated[
        LabelShare, Label("Label: phosphorus as P₂O₅"), Help("Printed as P: times 2.29."), LABEL
    ] = 0.0,
    label_k2o_percent: Annotated[
        LabelShare, Label("Label: potassium as K₂O"), Help("Printed as K: times 1.20."), LABEL
    ] = 0.0,
    label_fe_percent: Annotated[LabelShare, Label("Label: iron, Fe"), LABEL] = 0.0,
    label_mg_percent: Annotated[
        LabelShare, Label("Label: magnesium, Mg"), Help("Printed as MgO: times 0.60."), LABEL
    ] = 0.0,
    density_g_ml: Annotated[
        Density,
        Label("Label: density"),
        Help("1 if it is not printed, or if the shares are grams in 100 mL."),
        LABEL,
    ] = 1.0,
    schedule: Annotated[
        Schedule,
        Label("How often"),
        Choices(("a single dose", "every day", "every week", "after each water change")),
        OFTEN,
    ] = "weekly",
    now_mg_l: Annotated[
        Concentration, Label("Reading now"), Help("Of what you raise."), OFTEN
    ] = 0.0,
    tap_mg_l: Annotated[Concentration, Label("Reading of the new water"), FINER] = 0.0,
    use_mg_l_week: Annotated[
        Concentration,
        Label("Plants take in a week"),
        Help("How far it falls in a week with no dose and no change; 0 if you do not know."),
        FINER,
    ] = 0.0,
    change_percent: Annotated[Percent, Label("Water changed each time"), OFTEN] = 30.0,
    change_every_days: Annotated[Interval, Label("Change every"), Possible(1, 365), OFTEN] = 7.0,
) -> Dosing:
    """Find the dose of a salt or a labelled bottle for a rise, and the level it settles at.

    Mass is rise times water volume, divided by the share of the nutrient in the salt, water of
    crystallisation included. The bottle is filled with water up to its mark, so less goes into it
    than dissolves in a litre of water. A label prints phosphorus and potassium as oxides; they
    are changed to phosphate and potassium here.

    The level follows from doses, changes and what plants take. Each stretch between changes starts
    with its dose and ends with its change. Salts of ammonium are left out on purpose.
    """
    label = Analysis(
        label_n_percent, label_p2o5_percent, label_k2o_percent, label_fe_percent, label_mg_percent
    )
    salt = SALTS.get(source)
    check(salt, label, nutrient, bottle_ml, dose_ml)
    shares = salt.shares() if salt else label.shares()
    share = shares[nutrient] or 0.0  # checked: it is above nothing
    grams = rise_mg_l * volume_l / 1000 / share
    adds = {key: None if one is None else rise_mg_l * one / share for key, one in shares.items()}
    every = change_every_days if schedule == "after-change" else DOSE_EVERY_DAYS.get(schedule)
    rhythm = Rhythm(every, change_every_days, change_percent / 100)
    plan = Plan(nutrient, now_mg_l, rise_mg_l, use_mg_l_week / DAYS_A_WEEK, tap_mg_l, rhythm)
    settled = settle(plan.rise, plan.use_a_day, plan.tap, plan.rhythm)
    bottle = (
        mixed(salt, grams, bottle_ml, dose_ml) if salt else bought(grams / density_g_ml, bottle_ml)
    )
    return Dosing(
        *bottle,
        adds=adds,
        settled_before_change_mg_l=settled.before if settled else None,
        settled_after_change_mg_l=settled.after if settled else None,
        notes=(
            verdict(bottle, dose_ml, nutrient, rise_mg_l),
            *ammonia_notes(source, plan, adds),
            *level_cautions(plan, adds),
            *rise_cautions(adds),
            *bottle_notes(salt, bottle, bottle_ml, adds["iron"] or 0.0),
            *settling_notes(plan, settled),
        ),
        series={"level": level(plan)},
    )


def check(
    salt: Salt | None, label: Analysis, nutrient: str, bottle_ml: float, dose_ml: float
) -> None:
    """Refuse what does not go together: a nutrient the source lacks, a dose above the bottle."""
    if salt is None:
        label.check(nutrient)
        return
    wrong = []
    if not salt.share(nutrient):
        why = f"{salt.name} gives no {nutrient} that plants can use"
        holds = tuple(key for key in get_args(Nutrient) if salt.share(key))
        wrong.append(Refusal("nutrient", why, choices=holds))
    if dose_ml > bottle_ml:
        why = "one dose is more than the bottle holds"
        wrong.append(Refusal("dose_ml", why, LEAST_DOSE_ML, bottle_ml))
    if wrong:
        raise Refused(*wrong)


def level(plan: Plan) -> Series:
    """The level of the nutrient over eight weeks from the first dose."""
    days, levels = course(plan.now, plan.rise, plan.use_a_day, plan.tap, plan.rhythm)
    return Series(plan.nutrient.capitalize(), "mg/L", "Day", "days", days, levels)

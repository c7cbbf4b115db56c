"""Fertiliser salts, or a labelled bottle, to reach a rise in the water."""

from typing import Annotated, get_args

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow, Part
from calculators.core.leads import Lead
from calculators.core.quantities import (
    Concentration,
    Density,
    Interval,
    LabelShare,
    Millilitres,
    Percent,
    Strength,
    Volume,
)
from calculators.core.quantity import Assumed, Help, Label, Possible
from calculators.core.result import Refusal, Refused, Series
from calculators.dosing.bottle import bought, mixed
from calculators.dosing.cautions import Plan
from calculators.dosing.dose_options import (
    DOSE_EVERY_DAYS,
    NITROGEN_FORM_WORDS,
    NUTRIENT_WORDS,
    SCHEDULE_WORDS,
    SOURCE_WORDS,
    NitrogenForm,
    Nutrient,
    Schedule,
    Source,
)
from calculators.dosing.outputs import Dosing
from calculators.dosing.product_labels import MOST_GRAMS_A_LITRE, Analysis, Printed
from calculators.dosing.salt_advice import SaltDose, advice
from calculators.dosing.salts import SALTS, Salt
from calculators.dosing.settling import DosingSchedule, course, settled_level
from calculators.dosing.target import target_rise
from calculators.science.conversions import DAYS_PER_WEEK

NEVER_DAYS = 365.0  # stands for the interval of changes that nobody makes
LEAST_DOSE_ML = 0.01
LARGEST_BOTTLE_ML = 25_000

OFTEN = Part("How often, and your water changes")
WATER = Part("What the water has, and what you want")
FROM = Part("What you dose")
MIX = Part("Mixing a bottle of a salt", closed=True)
LABEL = Part("What the label of a bottle prints", closed=True)
BY_LITRE = Part("Or a label that counts grams a litre (mg/mL is the same)", closed=True)
PrintedGrams = Annotated[Strength, Possible(0, MOST_GRAMS_A_LITRE)]

CHANGE_ROW = "Rhythm"
LEVEL_ROW = "Levels"


@calculator(
    "Dosing",
    sources=(
        "ciaaw-2021", "handbook-solubility", "phreeqc", "jecfa-1999-fe-edta", "camargo-2005",
        "bc-nitrate-2009", "canada-iron-2019", "epa-1976-iron", "epa-1988-chloride",
        "biesinger-christensen-1972", "mount-1997", "mount-2016", "echa-phosphoric-acid",
        "epa-2013-ammonia", "emerson-1975", "yang-2008", "arthur-leonard-1970", "eu-2019-1148",
        "gb-precursors-2023",
    ),
leads_to=(Lead("trend", "See which way the readings then go", {}),),
)  # fmt: skip
def dosing(
    schedule: Annotated[
        Schedule, Label("How often"), SCHEDULE_WORDS, OFTEN, InRow(CHANGE_ROW)
    ] = "weekly",
    change_percent: Annotated[
        Percent | None,
        Label("Water changed each time"),
        Help("Empty counts as no changes."),
        OFTEN,
        InRow(CHANGE_ROW, "Each change"),
    ] = 30.0,
    change_every_days: Annotated[
        Interval | None, Label("Change every"), Possible(1, 365), OFTEN, InRow(CHANGE_ROW)
    ] = 7.0,
    volume_l: Annotated[Volume, Help("Water in the tank, without soil and stones."), WATER] = 120.0,
    nutrient: Annotated[Nutrient, Label("To raise"), NUTRIENT_WORDS, WATER] = "nitrate",
    now_mg_l: Annotated[
        Concentration | None,
        Label("Reading now"),
        Help("Of what you raise."),
        WATER,
        InRow(LEVEL_ROW, "Now"),
    ] = None,
    target_mg_l: Annotated[
        Concentration | None,
        Label("Level to reach"),
        Possible(0, 1_000),
        Help("From the reading now. Leave it empty to give a rise."),
        WATER,
        InRow(LEVEL_ROW, "To reach"),
    ] = None,
    rise_mg_l: Annotated[
        Concentration | None,
        Label("Or a rise by each dose"),
        Possible(0, 1_000),
        Help("Left aside where a level to reach is given."),
        WATER,
        InRow(LEVEL_ROW, "Or a rise"),
    ] = 5.0,
    use_mg_l_week: Annotated[
        Concentration,
        Label("Plants take in a week"),
        Help("How far it falls in a week with no dose and no change; 0 if you do not know."),
        FINER,
        Assumed(),
    ] = 0.0,
    tap_mg_l: Annotated[
        Concentration,
        Label("Reading of the new water"),
        Help("Of what you raise."),
        FINER,
        Assumed(),
    ] = 0.0,
    source: Annotated[Source, Label("What you dose"), SOURCE_WORDS, FROM] = "kno3",
    bottle_ml: Annotated[
        Millilitres,
        Label("Bottle"),
        Possible(1, LARGEST_BOTTLE_ML),
        Help("Filled to the mark."),
        MIX,
        Assumed(),
    ] = 500.0,
    dose_ml: Annotated[
        Millilitres,
        Label("One dose from a bottle you mix"),
        Possible(LEAST_DOSE_ML, LARGEST_BOTTLE_ML),
        MIX,
        Assumed(),
    ] = 10.0,
    label_n_form: Annotated[
        NitrogenForm,
        Label("Label: its nitrogen is"),
        NITROGEN_FORM_WORDS,
        Help("Not said counts as ammonia, which is the worse case."),
        LABEL,
        Assumed(),
    ] = "unknown",
    label_n_percent: Annotated[
        LabelShare,
        Label("Label: nitrogen, N"),
        Help("0 where the label prints none."),
        LABEL,
        Assumed(),
    ] = 0.0,
    label_p2o5_percent: Annotated[
        LabelShare,
        Label("Label: phosphorus as P₂O₅"),
        Help("Printed as P: times 2.29."),
        LABEL,
        Assumed(),
    ] = 0.0,
    label_k2o_percent: Annotated[
        LabelShare,
        Label("Label: potassium as K₂O"),
        Help("Printed as K: times 1.20."),
        LABEL,
        Assumed(),
    ] = 0.0,
    label_fe_percent: Annotated[LabelShare, Label("Label: iron, Fe"), LABEL, Assumed()] = 0.0,
    label_mg_percent: Annotated[
        LabelShare,
        Label("Label: magnesium, Mg"),
        Help("Printed as MgO: times 0.60."),
        LABEL,
        Assumed(),
    ] = 0.0,
    density_g_ml: Annotated[
        Density,
        Label("Label: density"),
        Help("1 if it is not printed. It is not used for grams a litre."),
        LABEL,
        Assumed(),
    ] = 1.0,
    label_n_g_l: Annotated[PrintedGrams, Label("Nitrogen, N"), BY_LITRE, Assumed()] = 0.0,
    label_p2o5_g_l: Annotated[
        PrintedGrams,
        Label("Phosphorus as P₂O₅"),
        Help("Printed as P: times 2.29."),
        BY_LITRE,
        Assumed(),
    ] = 0.0,
    label_k2o_g_l: Annotated[
        PrintedGrams,
        Label("Potassium as K₂O"),
        Help("Printed as K: times 1.20."),
        BY_LITRE,
        Assumed(),
    ] = 0.0,
    label_fe_g_l: Annotated[PrintedGrams, Label("Iron, Fe"), BY_LITRE, Assumed()] = 0.0,
    label_mg_g_l: Annotated[
        PrintedGrams,
        Label("Magnesium, Mg"),
        Help("Printed as MgO: times 0.60."),
        BY_LITRE,
        Assumed(),
    ] = 0.0,
) -> Dosing:
    """Find the dose of a salt or a labelled bottle for a rise or a level, and where it settles.

    A level to reach is a rise from the reading now. Mass is rise times water volume, divided by the
    share of the nutrient in the salt, water of crystallisation included. The bottle is filled with
    water up to its mark, so less goes into it than dissolves in a litre of water. A label prints
    phosphorus and potassium as oxides; they are changed to phosphate and potassium here.

    The level follows from doses, changes and what plants take. Each stretch between changes starts
    with its dose and ends with its change. Salts of ammonium are left out on purpose.
    """
    label = Printed(
        Analysis(
            label_n_percent, label_p2o5_percent, label_k2o_percent, label_fe_percent, label_mg_percent
        ),
        density_g_ml,
        Analysis(label_n_g_l, label_p2o5_g_l, label_k2o_g_l, label_fe_g_l, label_mg_g_l),
    )  # fmt: skip
    salt = SALTS.get(source)
    rise = target_rise(rise_mg_l, target_mg_l, now_mg_l)
    check(salt, label, nutrient, bottle_ml, dose_ml)
    rhythm = rhythm_of(schedule, change_percent, change_every_days)
    use = use_mg_l_week / DAYS_PER_WEEK
    plan = Plan(nutrient, now_mg_l or 0.0, rise, use, tap_mg_l, rhythm)
    shares = salt.shares() if salt else label.shares()
    share = shares[nutrient] or 0.0  # checked: it is above nothing
    amount = rise * volume_l / 1000 / share  # g of a salt, mL of a labelled bottle
    form = label_n_form if source == "label" else source
    bottle = mixed(salt, amount, bottle_ml, dose_ml) if salt else bought(amount, bottle_ml)
    adds = {
        key: None if ion_share is None else rise * ion_share / share
        for key, ion_share in shares.items()
    }
    settled = settled_level(plan.rise, plan.use_a_day, plan.tap, plan.rhythm)
    dose = SaltDose(
        plan, target_mg_l, now_mg_l, salt, form, bottle, bottle_ml, dose_ml, adds, settled
    )  # fmt: skip
    return answer(dose)


def answer(dose: SaltDose) -> Dosing:
    """The outputs of a dose that is worked out."""
    plan, settled, every = dose.plan, dose.settled, dose.plan.rhythm.dose_every
    return Dosing(
        *dose.bottle,
        rise_used_mg_l=plan.rise,
        week_mg_l=plan.rise * DAYS_PER_WEEK / every if every else None,
        adds=dict(dose.adds),
        settled_before_change_mg_l=settled.before if settled else None,
        settled_after_change_mg_l=settled.after if settled else None,
        notes=advice(dose),
        series={"level": level(plan)},
    )


def rhythm_of(schedule: Schedule, percent: float | None, days: float | None) -> DosingSchedule:
    """How often is dosed and changed; changes of which a figure is missing count as none."""
    changes = percent is not None and days is not None
    change_every = days if changes and days is not None else NEVER_DAYS
    share = percent / 100 if changes and percent is not None else 0.0
    every = change_every if schedule == "after-change" else DOSE_EVERY_DAYS.get(schedule)
    return DosingSchedule(every, change_every, share)


def check(
    salt: Salt | None, label: Printed, nutrient: str, bottle_ml: float, dose_ml: float
) -> None:
    """Refuse what does not go together: a nutrient the source lacks, a dose above the bottle.

    Raises ``Refused``; volumes are in mL.
    """
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

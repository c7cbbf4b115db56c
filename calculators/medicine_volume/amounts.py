"""The water that is really there, and a label's dose for it."""


def net_litres(gross_l: float, displaced_l: float) -> float:
    """The free water of a tank, in litres: what it holds less soil, stones and wood."""
    return gross_l - displaced_l


def dose_for(water_l: float, label_amount: float, label_for_l: float) -> float:
    """A label's amount for so much water, in the label's own unit.

    That is the unit of ``label_amount``.
    """
    return label_amount * water_l / label_for_l


def redose(dose: float, change_percent: float) -> float:
    """What a change takes out of a dose that is still all there, in the label's own unit."""
    return dose * change_percent / 100


def copper_ug_l(label_amount: float, label_for_l: float, copper_mg_per_unit: float) -> float:
    """Copper of the label's dose in micrograms a litre; it is the same for every volume.

    The ``label_amount`` is in the label's own unit, of which one holds that many mg of copper.
    """
    return 1000 * copper_mg_per_unit * label_amount / label_for_l

"""The look of a plant in a tank, from the way its record says it is drawn."""

from scripts.records.plant import Plant

GROWTH_FORMS = {
    "upright": "upright",
    "sprawling": "sprawling",
    "carpet": "carpet or low mat",
    "on-hardscape": "tied to wood or stone",
    "floating": "floating",
    "in-air": "leaves in the air",
}
GROWTH_FORM_OF_DRAWING = {
    "stem": "upright", "rosette": "upright", "grass": "upright", "creeping-stem": "sprawling",
    "rootless-stem": "sprawling", "carpet": "carpet", "thallus": "carpet", "moss": "on-hardscape",
    "epiphyte": "on-hardscape", "floating-rosette": "floating", "floating-stem": "floating",
    "floating-frond": "floating", "marginal": "in-air",
}  # fmt: skip


def growth_form(plant: Plant) -> str | None:
    """A key of ``LOOKS``; None where the record has no traits, and a low carpet comes before grass."""
    if plant.traits is None:
        return None
    return "carpet" if plant.habit == "carpet" else GROWTH_FORM_OF_DRAWING[plant.traits.draw]

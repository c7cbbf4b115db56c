"""How deep soil and cap should lie, and what is said where they do not."""

from calculators.core.result import Note

DEEP_SOIL_CM = 4  # common practice, no source: deeper soil turns airless
THIN_CAP_CM = 2  # common practice, no source: thinner ones let soil out when plants are pulled
THICK_CAP_CM = 5  # common practice, no source: deeper fine sand keeps air from the roots


def depth_notes(soil_cm: float, cap_cm: float) -> list[Note]:
    """Cautions about layers that are too deep or too thin; none about bare glass."""
    notes = []
    if soil_cm > DEEP_SOIL_CM:
        text = (
            f"Soil deeper than about {DEEP_SOIL_CM} cm turns airless and may gas: add it thinner."
        )
        notes.append(Note("caution", text))
    if soil_cm > 0 and cap_cm < THIN_CAP_CM:
        text = f"A cap thinner than about {THIN_CAP_CM} cm lets soil out when a plant is moved."
        notes.append(Note("caution", text))
    return notes


def thick_cap_note(soil_cm: float, cap_cm: float) -> list[Note]:
    """A caution where a cap over soil is so deep that air stays away."""
    if soil_cm == 0 or cap_cm <= THICK_CAP_CM:
        return []
    text = (
        f"A cap deeper than about {THICK_CAP_CM} cm keeps air from soil and roots, the finer the sand the "
        "more: lay it thinner."
    )
    return [Note("caution", text)]

"""What the count of a photograph says beside its figures, above all how far to trust it."""

from collections.abc import Sequence
from typing import Annotated, Literal

from calculators.core.figures import figure
from calculators.core.quantities import Area, Cover, Percent
from calculators.core.quantity import Digits
from calculators.core.result import Note
from calculators.core.wording import CUTTINGS
from calculators.surface_cover.count import Count, CoverRange
from calculators.surface_cover.leaf_sorts import DARK_PLANT, GLARE, RED
from calculators.surface_cover.photo_inputs import Tap
from calculators.surface_cover.room_area import RoomArea

CoverByEye = Annotated[Cover, Digits(2)]
ShareByEye = Annotated[Percent, Digits(2)]
Confidence = Literal["clear", "doubtful", "hard-to-tell"]

WORTH_SAYING = 0.02  # share of the room; less changes no decision
CLEAR_POINTS, DOUBTFUL_POINTS = 10.0, 25.0  # width of the range; our judgement

EXAMPLE = Note(
    "info",
    "No picture is given, so a drawn one with a known cover of 41 % is counted: demo data.",
)
DRAG = Note(
    "caution",
    "Drag the corners to the water's edge first: until then the frame and the room around are counted too.",
    True,
)
STAYS = Note(
    "info", "The photo is counted on this device and never sent; what you keep holds figures alone."
)


def confidence(cover: CoverRange, two_classes: bool, doubted: bool) -> Confidence:
    """How far the count is to be trusted, by the width of its range.

    A picture that needed marks of plant or water is never clear, nor one whose corners wait to be
    dragged: a count that follows a few marks can be wrong with a narrow range.
    """
    wide = cover.high - cover.low
    if not two_classes or wide > DOUBTFUL_POINTS:
        return "hard-to-tell"
    return "clear" if wide <= CLEAR_POINTS and not doubted else "doubtful"


def verdict(covers: CoverRange, sure: Confidence) -> Note:
    """The answer in plain words."""
    cover, low, high = (figure(CoverByEye, share) for share in covers)
    if sure == "hard-to-tell":
        text = (
            f"Hard to tell: the count says {cover} %, but it may be far off. Mark places, or "
            "go by eye."
        )
        return Note("caution", text, True)
    text = f"Floaters cover about {cover} % of their room, {low} to {high} %."
    return Note("info" if sure == "clear" else "caution", text, True)


def not_the_rulers(areas: RoomArea, ruler_cm2: float) -> list[Note]:
    """Why the room is not what length times width or the rings' diameter give, where it is not."""
    if not areas.why:
        return []
    text = (
        f"The room counted is {figure(Area, areas.room)} cm², of {figure(Area, ruler_cm2)} by length and "
        f"width: {' and '.join(areas.why)}."
    )
    return [Note("info", text)]


def notes(
    counted: Count, two_classes: bool, slant_removed: bool, example: bool, taps: Sequence[Tap]
) -> list[Note]:
    """What makes the picture hard to tell, and what the keeper can do about it."""
    collected = [EXAMPLE] if example else []
    kinds = {tap.what for tap in taps} & {"plant", "water"}
    if not two_classes and len(kinds) == 2:
        text = (
            "A place marked as plant and one marked as water look almost alike, so colour cannot tell "
            "them apart. Plants just under the water do that: go by eye, or by what you lift out."
        )
        collected.append(Note("caution", text))
    elif not two_classes:
        text = (
            "Plant and water do not show as two groups of colours: the surface is all one, or the light "
            "is poor. Tap “plant” and “water” on the picture, or compare by eye."
        )
        collected.append(Note("caution", text))
    collected += about_sorts(counted)
    if len(kinds) == 1:
        text = (
            "Only one kind is pointed out. Tap a place of the other kind too: colours between the two "
            "are then shared out between them."
        )
        collected.append(Note("info", text))
    if not slant_removed:
        text = (
            "With more or fewer than four corners a slant cannot be taken out: hold the phone level, "
            "straight above the middle."
        )
        collected.append(Note("info", text))
    text = (
        "Look at what is marked as counted before you trust the figure. Shadows, plants just below the "
        "surface and leaves that are neither green nor marked are what it mistakes."
    )
    return [*collected, Note("info", text), STAYS, CUTTINGS]


def about_sorts(counted: Count) -> list[Note]:
    """Parts of the picture that may be the other thing."""
    texts = {
        DARK_PLANT: "of the room is a fainter green that may be plants under the water. It is counted; if it "
        "should not be, tap it as water, and a floating leaf as plant.",
        GLARE: "of the room is glare and is counted as water. Turn the lamp off, or shade it with your "
        "hand, and take the photo again.",
        RED: "of the room is red and is counted as water. If those are red floaters, tap one as plant.",
    }
    return [
        Note("caution", f"{figure(ShareByEye, 100 * counted.by_sort[sort])} % {text}")
        for sort, text in texts.items()
        if counted.by_sort[sort] >= WORTH_SAYING
    ]

"""Floating cover counted in a photograph of the surface."""

from typing import Annotated, Any, NamedTuple

from calculators.core.declare import calculator
from calculators.core.form_hints import InRow
from calculators.core.leads import Lead
from calculators.core.loggable import Loggable
from calculators.core.quantities import Area, Length, PictureSide, ShareMoved
from calculators.core.quantity import (
    AskedFor,
    Assumed,
    Choices,
    Digits,
    Help,
    Label,
    Octets,
    Possible,
    Private,
    Quantity,
    Unpainted,
)
from calculators.core.result import Note
from calculators.science.growth.closed_surface import closed_surface
from calculators.surface_cover.channels import bits, counted
from calculators.surface_cover.count import count, range_of
from calculators.surface_cover.cover_reading import worth_logging
from calculators.surface_cover.drawn_surface import CORNERS, HEIGHT, WIDTH
from calculators.surface_cover.leaf_share import shares
from calculators.surface_cover.leaf_sorts import GLARE, sorted_pixels
from calculators.surface_cover.photo_inputs import (
    COVER_PLACES,
    MOST_OCTETS,
    Corner,
    Sizes,
    Tap,
    check_size,
    for_floaters,
    marks_of,
    mask,
    not_dragged,
    room_of,
    shapes,
    shown_picture,
)
from calculators.surface_cover.plant_colours import colours_of, marks_differ
from calculators.surface_cover.room_area import room_area
from calculators.surface_cover.words import (
    DRAG,
    Confidence,
    CoverByEye,
    ShareByEye,
    confidence,
    not_the_rulers,
    notes,
    verdict,
)


class SurfaceCover(NamedTuple):
    """The cover, how sure, and what was counted."""

    confidence: Annotated[
        Confidence,
        Label("How plain the picture is"),
        Choices(
            ("clear", "doubtful: look at what is marked", "hard to tell: mark, or go by eye"),
            levels=("info", "caution", "caution"),
        ),
    ]
    cover_percent: Annotated[CoverByEye, Help("Of the floaters' room.")]
    cover_low_percent: Annotated[CoverByEye, Label("At least")]
    cover_high_percent: Annotated[CoverByEye, Label("At most")]
    covered_cm2: Annotated[Area, Digits(2), Label("Covered")]
    surface_cm2: Annotated[
        Area, Label("Water surface"), Help("By your length and width, inside the corners.")
    ]
    room_cm2: Annotated[
        Area,
        Label("Room counted"),
        Help("Inside the rings, or the whole surface; less what is left out."),
    ]
    glare_percent: Annotated[ShareByEye, Label("Glare"), Help("Counted as water.")]
    pixels: Annotated[int, Quantity("Points counted", "", (0, 1e6), digits=6)]
    mask: Annotated[
        dict[str, Any], Label("Counted as plant, eight points an octet, in base64"), Unpainted()
    ]
    shapes: Annotated[list[dict[str, Any]], Label("Outlines over the picture"), Unpainted()]
    for_floaters: Annotated[dict[str, float], Label("For the floaters calculator"), Unpainted()]
    to_log: Annotated[dict[str, Any] | None, Label("For the tank's log"), Unpainted()]
    notes: tuple[Note, ...]


EXAMPLE_CORNERS = [Corner(100 * x / WIDTH, 100 * y / HEIGHT) for x, y in CORNERS]

SIZE_ROW = "Surface, inside"


@calculator(
    "Cover from a photo",
    sources=("woebbecke-1995", "meyer-neto-2008", "otsu-1979", "point-counting", "heckbert-1989"),
    leads_to=(
        Lead(
            "floaters",
            "Use this cover in Floaters",
            {
                key: f"for_floaters.{key}"
                for key in (
                    "cover_percent",
                    "length_cm",
                    "width_cm",
                    "ring_diameter_cm",
                    "ring_count",
                )
            },
            needs=("for_floaters",),
        ),
    ),
    logs=Loggable("reading", "cover_percent", "to_log"),
)
def surface_cover(
    pixels: Annotated[
        str | None,
        Label("Photo of the surface"),
        Octets(MOST_OCTETS),
        AskedFor(),
        Private(),
        Help("From above, with all of the water in it and the lamp off or aside."),
    ] = None,
    width_px: Annotated[PictureSide, Label("Picture's width"), Private(), Assumed()] = WIDTH,
    height_px: Annotated[PictureSide, Label("Picture's height"), Private(), Assumed()] = HEIGHT,
    corners: Annotated[
        list[Corner],
        Label("Corners of the water"),
        Private(),
        Assumed(),
        Help("Four for a rectangle, at any slant; others for any outline, from straight above."),
    ] = EXAMPLE_CORNERS,
    taps: Annotated[
        list[Tap],
        Label("Places you pointed out"),
        Private(),
        Help("Colours like a marked place follow it."),
        Assumed(),
    ] = [],  # noqa: B006
    more_percent: Annotated[
        ShareMoved,
        Label("Count more as plant"),
        Private(),
        Assumed(),
        Help("Below 0 counts less. It moves the line between the two colours."),
        Assumed(),
    ] = 0.0,
    length_cm: Annotated[
        Length,
        Label("Surface length, inside"),
        Help("For the area in cm², and for rings."),
        InRow(SIZE_ROW, "Length"),
    ] = 80.0,
    width_cm: Annotated[Length, Label("Surface width, inside"), InRow(SIZE_ROW, "Width")] = 35.0,
    ring_diameter_cm: Annotated[
        Length,
        Label("Ring that holds the floaters"),
        Possible(0, 1_000),
        Help("Inner diameter; 0 for none. Tap the middle of each ring."),
        Assumed(),
    ] = 0.0,
    leave_out_cm: Annotated[
        Length,
        Label("Leave out around a tap"),
        Help("Across, for a filter or a hand."),
        Assumed(),
    ] = 6.0,
) -> SurfaceCover:
    """Count how much of the surface floaters cover, from a photo that stays on this device.

    Mark the corners of the water. The four corners of a rectangle undo the slant of the picture:
    each point weighs as much as the water that it shows. Plant is what is greener than a line
    between the two groups of colours (excess green, parted by Otsu's method). Glare counts as
    water. Where the count is wrong, tap a place as plant or as water, and colours like it follow.

    The range allows for colours near the line, glare, shaded, dark and red parts, and corners a little
    off, and is never less than 3 points either way. In pictures that our tests draw with a known
    cover the error stays within 3 points; in rougher ones that we tried, with
    grain, rims and a lamp, it was up to 6.
    Your tank is no drawing: the range is our judgement. It does not allow for plants under the
    water that are as bright as floating ones: those are counted, and marks help little there. A
    picture that needed marks is never called clear.
    """
    shown = shown_picture(pixels, width_px, height_px)
    sizes = Sizes(length_cm, width_cm, ring_diameter_cm, leave_out_cm)
    room = room_of(shown, corners, taps, sizes)
    pieces = room.pieces(shown.width, shown.height)
    check_size(pieces)
    around = room.pieces(shown.width, shown.height, whole_surface=True) if room.rings else pieces
    inside = counted(shown, around)
    marks = marks_of(shown, taps)
    colours = colours_of(inside, marks)
    both_marked = {mark.plant for mark in marks} == {True, False}  # the keeper has decided
    apart = marks_differ(marks) if both_marked else colours.two_classes
    sorts = sorted_pixels(shares(shown, colours, inside), more_percent, not both_marked)
    sums = count(sorts, shown.width, pieces, room.to_square)
    between = range_of(sums, apart, bool(marks))
    waiting = pixels is not None and not_dragged(corners)
    sure = confidence(between, apart, bool(marks) or waiting)
    areas = room_area(room, sums, length_cm * width_cm, shown.width, shown.height)
    onward = for_floaters(between.cover, sizes, len(room.rings))
    of_surface = areas.room / areas.surface if room.rings else 1.0
    return SurfaceCover(
        confidence=sure,
        cover_percent=between.cover,
        cover_low_percent=between.low,
        cover_high_percent=between.high,
        # To the same part of a percent as goes on to the floaters, so that both say one area.
        covered_cm2=round(between.cover, COVER_PLACES) / 100 * areas.room,
        surface_cm2=areas.surface,
        room_cm2=areas.room,
        glare_percent=100 * sums.by_sort[GLARE],
        pixels=sums.pixels,
        mask={
            "width": shown.width,
            "height": shown.height,
            "bits": bits(mask(sorts, shown.width, pieces)),
        },
        shapes=shapes(room, shown),
        for_floaters=onward,
        to_log=worth_logging(between, sure, of_surface) if pixels and not waiting else None,
        notes=(
            *([DRAG] if waiting else []),
            verdict(between, sure),
            *closed_surface(of_surface * between.high),
            *not_the_rulers(areas, length_cm * width_cm),
            *notes(sums, apart, room.edge.slant_removed, pixels is None, taps),
        ),
    )

"""Cover counted in pictures that the tests draw with a known cover: within 3 points, or said to be unsure."""

import numpy as np
import pytest

from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.science.shelf.entries import READINGS
from tests.effort import long_run, share_of
from tests.surface_pictures import (
    AS_PAGE,
    GREEN,
    LENGTH,
    PAGE_STEP,
    RED,
    SLANTED,
    STRAIGHT,
    TURNED,
    WATERS,
    WIDTH,
    YELLOW,
    given,
    map_between,
    photo,
    sampled,
    strewn,
)

POINTS = 3.0  # points of cover, the error that is allowed


def side_lit(x, y):
    """A lamp at one end: from 0.35 to 1.1 of the light."""
    return 0.35 + 0.75 * x / LENGTH


def spot_lit(x, y):
    """One lamp over the middle: corners get 0.3 of the light, the middle 1.1."""
    return 0.3 + 0.8 * np.exp(-((x - 40) ** 2 + (y - 17) ** 2) / 400)


def outcome(seed, wanted, radius, colours, water, corners=STRAIGHT, **effects):
    """The outputs for a picture so drawn, and the cover that it has."""
    dice = np.random.default_rng(seed)
    leaves, known = strewn(dice, wanted, radius, colours)
    shown = sampled(photo(dice, leaves, water, corners, **effects))
    return run("surface-cover", given(shown, corners)), known, shown, leaves


def close(found, known):
    """Within 3 points, and inside its own range."""
    outputs = found["outputs"]
    assert abs(outputs["cover_percent"] - known) <= POINTS
    assert outputs["cover_low_percent"] <= known <= outputs["cover_high_percent"]


@pytest.mark.parametrize(
    ("water", "wanted"),
    share_of(
        [
            *((water, 0.4) for water in WATERS),
            ("black", 0.05),
            ("sand", 0.05),
            ("tea", 0.9),
            ("sand", 0.9),
        ],
        5,
    ),
)
def test_counts_leaves_on_any_water(water, wanted):
    found, known, *_ = outcome(1, wanted, 1.2, GREEN, water, SLANTED)
    close(found, known)
    assert found["outputs"]["confidence"] == "clear"


@long_run()
@pytest.mark.parametrize("radius", [0.4, 3.0])
@pytest.mark.parametrize("corners", share_of([SLANTED, STRAIGHT, TURNED], 3))
def test_counts_small_leaves_and_rosettes_at_any_slant(radius, corners):
    found, known, *_ = outcome(2, 0.3, radius, GREEN, "dark", corners, noise=3.0)
    close(found, known)


@long_run()
@pytest.mark.parametrize("corners", [SLANTED, STRAIGHT])
def test_counts_duckweed(corners):
    """Fronds of 3 mm, in a photo nearly as fine as the page takes it: four of its pixels across."""
    dice = np.random.default_rng(2)
    leaves, known = strewn(dice, 0.3, 0.15, GREEN)
    shown = sampled(photo(dice, leaves, "dark", corners, noise=3.0, fine=AS_PAGE), PAGE_STEP)
    close(run("surface-cover", given(shown, corners)), known)


@long_run()
def test_duckweed_in_a_coarse_photo_is_doubtful_and_the_range_holds_it():
    """Two pixels across: hardly one is leaf alone, and the count is off. The answer says so."""
    found, known, *_ = outcome(2, 0.3, 0.15, GREEN, "dark", noise=3.0)
    outputs = found["outputs"]
    assert outputs["cover_low_percent"] <= known <= outputs["cover_high_percent"]
    assert outputs["confidence"] != "clear"


@pytest.mark.parametrize(
    ("light", "water"),
    share_of([(side_lit, "dark"), (side_lit, "sand"), (spot_lit, "dark"), (spot_lit, "tea")], 3),
)
def test_counts_under_uneven_light(light, water):
    found, known, *_ = outcome(3, 0.4, 1.0, GREEN + YELLOW, water, SLANTED, light=light)
    close(found, known)


@long_run()
@pytest.mark.parametrize("noise", share_of([15.0, 0.0], 2))
def test_counts_with_no_noise_and_with_a_lot(noise):
    found, known, *_ = outcome(4, 0.4, 1.0, YELLOW, "dark", noise=noise)
    close(found, known)


def test_glare_counts_as_water_and_is_said():
    spots = [(0.3, 0.5, 0.06), (0.6, 0.4, 0.05)]
    found, known, *_ = outcome(5, 0.3, 1.0, GREEN, "dark", glare=spots)
    close(found, known)
    assert found["outputs"]["glare_percent"] > 0.5


@long_run()
def test_near_and_far_water_count_alike():
    """Leaves in the far half alone: half of the surface, though a third of the picture of it."""
    dice = np.random.default_rng(6)
    leaves, _ = strewn(dice, 0.999, 1.5, GREEN, within=lambda x, y: y < WIDTH / 2)
    keep = leaves.y + leaves.radius < WIDTH / 2 + 0.2
    half = type(leaves)(*(part[keep] for part in leaves))
    x, y = np.meshgrid(np.arange(0.05, LENGTH, 0.1), np.arange(0.05, WIDTH, 0.1))
    known = 100 * (half.cover(x, y) >= 0).mean()
    shown = sampled(photo(dice, half, "dark", SLANTED))
    found = run("surface-cover", given(shown, SLANTED))["outputs"]
    assert 40 < known < 51
    assert abs(found["cover_percent"] - known) <= POINTS
    width = found["mask"]["width"]
    inside_picture = map_between(
        [(0, 0), (1, 0), (1, 1), (0, 1)], [(a * width, b * width * 0.75) for a, b in SLANTED]
    )
    middle = inside_picture @ [0.5, 0.5, 1]
    top, bottom = (SLANTED[0][1] * width * 0.75), (SLANTED[3][1] * width * 0.75)
    assert middle[1] / middle[2] < top + 0.45 * (bottom - top), "the picture is not slanted"


@long_run()
def test_open_water_and_a_closed_cover_are_called_hard_to_tell_but_not_far_off():
    for wanted, expected in ((0.0, 0), (0.999, 100)):
        outputs = outcome(7, wanted, 1.2, GREEN, "dark")[0]["outputs"]
        assert abs(outputs["cover_percent"] - expected) <= POINTS
        assert outputs["confidence"] == "hard-to-tell"


def speaks_of_air(wanted):
    """Whether the answer to a picture of that cover says what a closed mat does to animals."""
    found = outcome(9, wanted, 1.2, GREEN, "dark")[0]
    return "Watch the animals at dawn" in " ".join(note["text"] for note in found["notes"])


def test_a_closed_surface_speaks_of_the_animals_air_at_night():
    assert [speaks_of_air(wanted) for wanted in (0.4, 0.9)] == [False, True]


def place(corners, x, y, what):
    """A tap at a place of the surface, in cm."""
    on_surface = [(0, 0), (LENGTH, 0), (LENGTH, WIDTH), (0, WIDTH)]
    u, v, w = map_between(on_surface, [(100 * a, 100 * b) for a, b in corners]) @ [x, y, 1]
    return {"what": what, "x_percent": u / w, "y_percent": v / w}


def on_leaf(leaves, colour):
    """The middle of a leaf of a colour that no other lies on."""
    for number in reversed(range(len(leaves.x))):
        x, y = leaves.x[number], leaves.y[number]
        later = slice(number + 1, None)
        off = np.hypot(leaves.x[later] - x, leaves.y[later] - y) - leaves.radius[later]
        inside = 3 < x < LENGTH - 3 and 3 < y < WIDTH - 3
        if inside and tuple(leaves.colour[number]) == colour and off.min(initial=9) > 0.6:
            return x, y
    raise AssertionError("no such leaf")


def on_water(*layers):
    """A place that no leaf of some layers is near; of the last, under the surface, the middle of one."""
    dice = np.random.default_rng(0)
    for _ in range(100_000):
        x, y = dice.uniform(5, LENGTH - 5), dice.uniform(5, WIDTH - 5)
        if all((np.hypot(one.x - x, one.y - y) - one.radius).min() > 0.6 for one in layers):
            return x, y
    raise AssertionError("no open water")


@pytest.mark.parametrize("colours", share_of([RED + GREEN, RED], 2))
def test_red_floaters_are_named_and_counted_after_two_taps(colours):
    found, known, shown, leaves = outcome(8, 0.4, 1.0, colours, "dark")
    said = found["outputs"]
    assert said["confidence"] != "clear"
    assert said["cover_high_percent"] >= known
    assert any("red floaters" in note["text"] for note in found["notes"])
    taps = [
        place(STRAIGHT, *on_leaf(leaves, RED[0]), "plant"),
        place(STRAIGHT, *on_water(leaves), "water"),
    ]
    close(run("surface-cover", given(shown, taps=taps)), known)


def test_dim_plants_under_the_water_widen_the_range():
    """A trap: half of the floor has plants. Far dimmer ones leave the truth in the range."""
    dice = np.random.default_rng(9)
    under, _ = strewn(dice, 0.5, 2, [(40, 70, 36), (44, 66, 40)])
    found, known, *_ = outcome(10, 0.3, 1.0, GREEN, "dark", under=under)
    outputs = found["outputs"]
    assert outputs["cover_low_percent"] <= known <= outputs["cover_high_percent"]
    assert outputs["confidence"] != "clear"


def test_what_it_cannot_do_is_said_plants_under_the_water_as_bright_as_floating_ones():
    dice = np.random.default_rng(9)
    under, _ = strewn(dice, 0.5, 2, GREEN)
    found, known, *_ = outcome(10, 0.3, 1.0, GREEN, "dark", under=under)
    assert found["outputs"]["cover_percent"] > known + POINTS
    assert any("just below the surface" in note["text"] for note in found["notes"])


@long_run()
def test_rings_are_the_room_and_what_is_left_out_is_not():
    dice = np.random.default_rng(11)
    middles, radius = [(20.0, 17.0), (58.0, 18.0)], 12.0
    inside = lambda x, y: np.any(  # noqa: E731
        [(x - u) ** 2 + (y - v) ** 2 < (radius - 1.2) ** 2 for u, v in middles], axis=0
    )
    leaves, _ = strewn(dice, 0.5, 0.9, GREEN, within=inside)
    x, y = np.meshgrid(np.arange(0.05, LENGTH, 0.1), np.arange(0.05, WIDTH, 0.1))
    covered = leaves.cover(x, y) >= 0
    ring = np.any([(x - u) ** 2 + (y - v) ** 2 < radius**2 for u, v in middles], axis=0)
    shown = sampled(photo(dice, leaves, "dark", SLANTED))
    taps = [place(SLANTED, *middle, "ring") for middle in middles]
    rings = given(shown, SLANTED, taps=taps, ring_diameter_cm=2 * radius)
    found = run("surface-cover", rings)["outputs"]
    assert abs(found["cover_percent"] - 100 * covered[ring].mean()) <= POINTS
    assert found["room_cm2"] == pytest.approx(2 * np.pi * radius**2, rel=0.01)
    assert found["for_floaters"]["ring_count"] == 2
    assert run("floaters", found["for_floaters"])["outputs"]["covered_cm2"] == pytest.approx(
        found["covered_cm2"], rel=0.02
    )
    out = rings | {"taps": [*taps, place(SLANTED, 20, 17, "leave-out")], "leave_out_cm": 16}
    less = run("surface-cover", out)["outputs"]
    gone = ring & ((x - 20) ** 2 + (y - 17) ** 2 < 64)
    assert less["room_cm2"] == pytest.approx(found["room_cm2"] - np.pi * 64, rel=0.01)
    assert abs(less["cover_percent"] - 100 * covered[ring & ~gone].mean()) <= POINTS

    # The log's cover is that of the whole surface, and its step the width of the range.
    part = 2 * np.pi * radius**2 / (LENGTH * WIDTH)
    logged = run("surface-cover", rings)["outputs"]["to_log"]
    assert abs(logged["value"] - 100 * covered.mean()) <= POINTS
    assert logged["value"] == pytest.approx(found["cover_percent"] * part, abs=0.5)
    width = found["cover_high_percent"] - found["cover_low_percent"]
    assert logged["step"] == pytest.approx(width * part, abs=0.06)


def test_a_count_goes_to_the_log_as_it_is_shown_and_only_where_it_holds():
    found, known, shown, _ = outcome(15, 0.4, 1.0, GREEN, "dark", SLANTED)
    logged = found["outputs"]["to_log"]
    assert abs(logged["value"] - known) <= POINTS
    assert logged["words"] == f"{logged['value']:.0f} % cover"
    assert logged["range"] in found["notes"][0]["text"]
    assert (
        run("surface-cover", {})["outputs"]["to_log"] is None
    )  # the drawn example is nobody's tank
    undragged = [(0.1, 0.1), (0.9, 0.1), (0.9, 0.9), (0.1, 0.9)]
    waiting = run("surface-cover", given(shown, undragged))["outputs"]
    assert waiting["to_log"] is None
    unsure = outcome(9, 0.0, 1.0, GREEN, "dark")[0]["outputs"]
    assert unsure["confidence"] == "hard-to-tell"
    assert unsure["to_log"] is None


def test_what_a_calculator_logs_is_a_reading_that_the_log_knows():
    logging = {name: spec.logs for name, spec in load_all().items() if spec.logs}
    assert logging.keys() == {"surface-cover"}
    for one in logging.values():
        assert one.kind == "reading"
        assert one.what in READINGS


def ruler_words(found):
    return [note["text"] for note in found["notes"] if "by length and width" in note["text"]]


@pytest.mark.parametrize("corners", share_of([SLANTED, STRAIGHT, TURNED], 3))
def test_the_photos_surface_is_the_rulers(corners):
    """80 by 35 cm are 2,800 cm², however coarse the picture; the floaters have the same figures."""
    found = outcome(15, 0.4, 1.0, GREEN, "dark", corners)[0]
    outputs = found["outputs"]
    assert outputs["surface_cm2"] == outputs["room_cm2"] == LENGTH * WIDTH
    then = run("floaters", outputs["for_floaters"])["outputs"]
    assert then["surface_cm2"] == outputs["surface_cm2"]
    assert then["covered_cm2"] == pytest.approx(outputs["covered_cm2"])
    assert not ruler_words(found)


@long_run()
def test_rings_have_the_area_of_their_diameter_and_the_floaters_the_same():
    shown = outcome(16, 0.4, 1.0, GREEN, "dark", SLANTED)[2]
    taps = [place(SLANTED, x, 17, "ring") for x in (20, 58)]
    found = run("surface-cover", given(shown, SLANTED, taps=taps, ring_diameter_cm=24))
    assert found["outputs"]["room_cm2"] == pytest.approx(2 * np.pi * 12**2)
    then = run("floaters", found["outputs"]["for_floaters"])["outputs"]
    assert then["allowed_cm2"] == pytest.approx(found["outputs"]["room_cm2"])
    assert then["covered_cm2"] == pytest.approx(found["outputs"]["covered_cm2"])
    assert not ruler_words(found)


@long_run()
@pytest.mark.parametrize(
    ("change", "area", "why"),
    share_of([
        # pi 3 x 3, by hand
        ({"taps": [("leave-out", 40, 17)]}, 2800 - 28.27, "what you left out"),
        # two discs of radius 12, middles 12 apart: 2 pi r r - r r (2 pi / 3 - sqrt(3) / 2)
        ({"taps": [("ring", 30, 17), ("ring", 42, 17)], "ring_diameter_cm": 24}, 727.9, "rings overlap"),
        # half of a disc beyond the edge
        ({"taps": [("ring", 0.001, 17)], "ring_diameter_cm": 24}, 226.2, "beyond the water's edge"),
        # a triangle is half of its rectangle
        ({"corners": [(0.05, 0.05), (0.95, 0.05), (0.5, 0.9)]}, 1400, "does not fill the rectangle"),
    ], 2),
)  # fmt: skip
def test_a_room_that_is_not_the_rulers_says_why(change, area, why):
    shown = outcome(17, 0.4, 1.0, GREEN, "dark", STRAIGHT)[2]
    taps = [place(STRAIGHT, x, y, what) for what, x, y in change.get("taps", [])]
    more = {key: value for key, value in change.items() if key == "ring_diameter_cm"}
    found = run("surface-cover", given(shown, change.get("corners", STRAIGHT), taps=taps, **more))
    assert found["outputs"]["room_cm2"] == pytest.approx(area, rel=0.02)  # a coarse picture
    [said] = ruler_words(found)
    assert why in said


@long_run()
def test_any_order_of_the_corners_and_any_outline_will_do():
    dice = np.random.default_rng(12)
    leaves, known = strewn(dice, 0.4, 1.0, GREEN)
    shown = sampled(photo(dice, leaves, "dark", STRAIGHT))
    turned = given(shown, [STRAIGHT[2], STRAIGHT[0], STRAIGHT[3], STRAIGHT[1]])
    assert run("surface-cover", turned)["outputs"] == run("surface-cover", given(shown))["outputs"]
    six = [*STRAIGHT, (0.5, 0.2), (0.5, 0.8)]
    found = run("surface-cover", given(shown, six))
    assert abs(found["outputs"]["cover_percent"] - known) <= POINTS
    assert any("straight above" in note["text"] for note in found["notes"])


def test_the_keeper_can_move_the_line_either_way():
    found, _, shown, _ = outcome(13, 0.4, 0.4, GREEN, "dark")
    covers = [
        run("surface-cover", given(shown, more_percent=more))["outputs"]["cover_percent"]
        for more in (-100, -30, 0, 30, 100)
    ]
    assert covers == sorted(covers)
    assert covers[0] + 5 < found["outputs"]["cover_percent"] < covers[-1] - 5


def test_the_mask_marks_as_many_points_as_are_counted():
    import base64

    found, _, shown, _ = outcome(14, 0.4, 1.0, GREEN, "dark", STRAIGHT)
    mask = found["outputs"]["mask"]
    ones = sum(octet.bit_count() for octet in base64.b64decode(mask["bits"]))
    share = 100 * ones / found["outputs"]["pixels"]
    assert share == pytest.approx(
        found["outputs"]["cover_percent"], abs=0.3
    )  # no slant: equal weights
    assert (mask["width"], mask["height"]) == (shown.shape[1], shown.shape[0])


@pytest.mark.parametrize(
    ("change", "key", "part"),
    [
        ({"pixels": "not base64!"}, "pixels", "is no base64"),
        ({"pixels": "AAAA"}, "pixels", "it holds 3 octets"),
        ({"pixels": "A" * 500_000}, "pixels", "too many; allowed is base64 of at most"),
        ({"pixels": 7}, "pixels", "is no base64"),
        ({"width_px": 8}, "width_px", "16 to 320"),
        ({"corners": []}, "corners", "0 corners will not do, 3 to 12 will"),
        ({"corners": [{"x_percent": 50, "y_percent": 50}] * 4}, "corners", "enclose nothing"),
        ({"corners": [{"x_percent": x, "y_percent": y} for x, y in
                      ((10, 10), (90, 10), (40, 20), (10, 90))]}, "corners", "between the others"),
        ({"corners": [{"x_percent": x, "y_percent": y} for x, y in
                      ((10, 10), (14, 10), (14, 14), (10, 14))]}, "corners", "200 are needed"),
        ({"corners": [{"x_percent": 120, "y_percent": 0}] * 4}, "corners[1].x_percent", "0 to 100"),
        ({"taps": [{"what": "fish", "x_percent": 1, "y_percent": 1}]}, "taps[1].what", "plant, water"),
        ({"taps": [{"what": "ring", "x_percent": 50, "y_percent": 50}]}, "ring_diameter_cm", "0.1 to 35"),
        ({"ring_diameter_cm": 50}, "ring_diameter_cm", "0 to 35"),
    ],
)  # fmt: skip
def test_refuses_what_is_no_picture_or_no_surface(change, key, part):
    with pytest.raises(BadInput) as bad:
        run("surface-cover", change)
    assert part in dict(bad.value.problems)[key]


def test_a_photo_never_stands_in_an_address():
    import json

    dice = np.random.default_rng(15)
    leaves, _ = strewn(dice, 0.4, 1.0, GREEN)
    inputs = given(sampled(photo(dice, leaves, "dark")), length_cm=90, more_percent=10)
    typed = inputs | {key: str(inputs[key]) for key in ("width_px", "height_px", "length_cm")}
    typed["corners"] = [
        {key: str(one) for key, one in corner.items()} for corner in typed["corners"]
    ]
    typed |= {"more_percent": "10", "width_cm": "35"}
    reply = json.loads(
        answer(json.dumps({"calculator": "surface-cover", "given": typed, "own": True}))
    )
    assert reply["address"] == {
        "length_cm": "90", "width_cm": "35", "ring_diameter_cm": "0", "leave_out_cm": "6",
    }  # fmt: skip
    [link] = reply["answer"]["leads"]
    assert link["calculator"] == "floaters"
    assert link["inputs"]["length_cm"] == 90
    assert "mask" not in reply["painted"]["html"].lower()


def test_a_picture_that_needed_marks_is_never_clear():
    dice = np.random.default_rng(1)
    leaves, known = strewn(dice, 0.4, 1.2, GREEN)
    shown = sampled(photo(dice, leaves, "dark", STRAIGHT))
    plant = place(STRAIGHT, *on_leaf(leaves, GREEN[0]), "plant")
    water = place(STRAIGHT, *on_water(leaves), "water")
    assert run("surface-cover", given(shown))["outputs"]["confidence"] == "clear"
    for taps in ([plant], [water], [plant, water]):
        found = run("surface-cover", given(shown, taps=taps))["outputs"]
        assert found["confidence"] == "doubtful"
        assert found["cover_low_percent"] <= known <= found["cover_high_percent"]
    alike = run("surface-cover", given(shown, taps=[plant, plant | {"what": "water"}]))
    assert alike["outputs"]["confidence"] == "hard-to-tell"
    assert any("look almost alike" in note["text"] for note in alike["notes"])


def test_a_photo_whose_corners_wait_to_be_dragged_is_not_called_clear():
    corners = [
        {"x_percent": x, "y_percent": y} for x, y in ((10, 10), (90, 10), (90, 90), (10, 90))
    ]
    dice = np.random.default_rng(1)
    leaves, _ = strewn(dice, 0.4, 1.2, GREEN)
    shown = given(sampled(photo(dice, leaves, "dark", STRAIGHT)))
    found = run("surface-cover", shown | {"corners": corners})
    assert found["outputs"]["confidence"] != "clear"
    assert found["notes"][0]["text"].startswith("Drag the corners")

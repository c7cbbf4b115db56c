"""The drawings hold what they promise: to scale, inside their frame, small, the same each time."""

import gzip
import re
import xml.etree.ElementTree as ET
from typing import get_args

import pytest

from calculators.identify.trait_words import ARRANGEMENTS, FORMS
from scripts.drawings.above import above
from scripts.drawings.closeup import closeup
from scripts.drawings.draw import drawing
from scripts.drawings.geometry import controls
from scripts.drawings.habits import FLOATING, ROUTINES
from scripts.drawings.size import frame
from scripts.records.traits import Arrangement, Colour, Draw, LeafShape
from scripts.setup.paths import ROOT
from tests.drawings.reader import box, drawn_points, view
from tests.own_records import own_records

LARGEST, LARGEST_PACKED = 13_000, 5_000  # bytes: a page with two pictures stays light on a phone
AFLOAT = (*FLOATING, "marginal", "thallus")


def test_each_kind_shape_and_arrangement_has_its_routine_and_a_sample(plants):
    assert set(ROUTINES) == set(FORMS) == set(get_args(Draw))
    assert set(ARRANGEMENTS) == set(get_args(Arrangement))
    traits = [plant.traits for plant in plants.values()]
    assert {one.draw for one in traits} == set(get_args(Draw))
    assert {one.leaf_shape for one in traits} == set(get_args(LeafShape))
    assert {one.arrangement for one in traits} == set(get_args(Arrangement))


def test_every_colour_word_has_its_class_in_the_style_sheet():
    style = (ROOT / "docs" / "assets" / "style.css").read_text(encoding="utf-8")
    for colour in get_args(Colour):
        assert f".leaf-{colour} {{" in style
        assert style.count(f"--{colour}: ") == 2, f"{colour} needs a light and a dark value"


def test_every_class_of_a_drawing_is_in_the_style_sheet(pictures):
    style = (ROOT / "docs" / "assets" / "style.css").read_text(encoding="utf-8")
    used = set()
    for svg in pictures.values():
        for element in ET.fromstring(svg).iter():
            used.update(element.get("class", "").split())
    missing = {name for name in used if not re.search(rf"\.{name}\b", style)}
    assert missing <= {"plant", "start"}, "these only name a part"


def test_no_style_attribute_no_script_no_address(pictures):
    for where, svg in pictures.items():
        for element in ET.fromstring(svg).iter():
            assert element.tag in ("svg", "title", "defs", "g", "path", "rect", "use", "text"), (
                where
            )
            assert "style" not in element.attrib, where
            assert element.get("href", "#").startswith("#"), where


def test_each_says_in_words_what_it_shows(pictures, plants):
    for (slug, _), svg in pictures.items():
        root = ET.fromstring(svg)
        assert root.get("role") == "img"
        label, traits = root.get("aria-label"), plants[slug].traits
        assert root.find("title").text == label
        assert plants[slug].name in label
        assert f"{traits.leaf_length_mm.high:g} mm long" in label
        assert traits.colour.replace("-", " ") in label


def test_ids_carry_the_slug_and_every_copy_finds_its_symbol(pictures):
    seen = set()
    for (slug, kind), svg in pictures.items():
        root = ET.fromstring(svg)
        ids = [one.get("id") for one in root.iter() if one.get("id")]
        assert all(name.startswith(f"{slug}_") for name in ids)
        assert len(ids) == len(set(ids)), (slug, kind)
        assert not seen & set(ids), (slug, kind)
        seen.update(ids)
        for copy in root.iter("use"):
            assert copy.get("href")[1:] in ids, (slug, kind)


def test_small_enough(pictures):
    sizes = {
        where: (len(svg.encode()), len(gzip.compress(svg.encode())))
        for where, svg in pictures.items()
    }
    too_large = {
        where: size
        for where, size in sizes.items()
        if size[0] > LARGEST or size[1] > LARGEST_PACKED
    }
    assert not too_large


def test_nothing_lies_outside_the_frame(pictures):
    outside = {}
    for where, svg in pictures.items():
        left, top, right, bottom = box(drawn_points(svg))
        _, _, width, height = view(svg)
        if min(left, top) < 0 or right > width or bottom > height:
            outside[where] = (left, top, right - width, bottom - height)
    assert not outside


def test_the_plant_is_as_tall_as_its_record_says_or_reaches_the_surface(plants, pictures):
    wrong = {}
    for slug, plant in plants.items():
        if plant.traits.draw in (*AFLOAT, "rootless-stem") or not plant.size.height_cm:
            continue
        svg, f = pictures[slug, "tank"], frame(36)
        _, _, _, high = view(svg)
        cap = high - f.cap - f.soil - 6  # y of the cap's top: 6 mm of border lie below the floor
        base = {"epiphyte": 26, "moss": None, "thallus": None}.get(plant.traits.draw, 0)
        top = cap - box(drawn_points(svg, "plant"))[1]
        if base is None:  # the stone's top
            base = cap - min(y for _, y in stone_points(svg))
        due = base + min(plant.size.height_cm.high * 10, f.surface - base)
        if abs(top - due) > 0.025 * due + 0.5:
            wrong[slug] = (round(top), round(due))
    assert not wrong


def stone_points(svg):
    root = ET.fromstring(svg)
    for one in list(root):
        if one.get("class") != "d-stone":
            root.remove(one)
    return drawn_points(ET.tostring(root, encoding="unicode"))


@pytest.mark.parametrize("height", [30, 45, 60])
def test_a_higher_tank_shows_more_of_a_tall_plant(plants, height):
    svg, f = drawing("vallisneria-test", plants["vallisneria-test"], height), frame(height)
    _, top, _, _ = box(drawn_points(svg, "plant"))
    _, _, _, high = view(svg)
    grown = high - f.cap - f.soil - 6 - top
    assert grown == pytest.approx(min(600, f.surface), rel=0.025)


def test_chains_on_stalks_hang_below_the_surface():
    """Flora of North America 22, Lemna trisulca: submersed, but when flowering or fruiting."""
    record = own_records().plants["lemna-trisulca"]
    svg, f = drawing("lemna-trisulca", record), frame(36)
    _, top, _, bottom = box(drawn_points(svg, "plant"))
    surface = view(svg)[3] - f.cap - f.soil - 6 - f.surface
    assert 0 < top - surface < 10
    assert bottom - surface < record.size.height_cm.high * 10


def test_hanging_roots_are_as_long_as_the_record_says(plants, pictures):
    for slug, plant in plants.items():
        claim = plant.traits.root_length_mm
        if plant.traits.draw not in FLOATING or claim is None or slug == "lemna-trisulca":
            continue  # that one hangs below the surface, and its few roots are not drawn
        f, svg = frame(36), pictures[slug, "tank"]
        _, _, _, high = view(svg)
        surface = high - f.cap - f.soil - 6 - f.surface
        depth = box(drawn_points(svg, "plant"))[3] - surface
        assert depth == pytest.approx(min(claim.high, f.surface - 8), rel=0.05, abs=1), slug


def test_a_rosette_from_above_is_as_wide_as_its_spread(plants):
    plant = plants["frogbit-test"]
    svg = above("frogbit-test", plant)
    left, top, right, bottom = box(drawn_points(svg, "plant"))
    spread = plant.size.spread_cm.high * 10
    assert bottom - top <= spread + 0.5
    assert right - left > spread  # a daughter stands beside it


def test_the_rule_from_above_is_ten_centimetres(pictures):
    for (_, kind), svg in pictures.items():
        if kind != "above":
            continue
        (rule,) = [one for one in ET.fromstring(svg).iter("path") if one.get("class") == "d-ticks"]
        xs = [x for x, _ in drawn_points(f"<svg>{ET.tostring(rule, encoding='unicode')}</svg>")]
        assert max(xs) - min(xs) == pytest.approx(100, abs=0.2)


def test_a_single_leaf_close_up_is_as_long_as_the_middle_of_its_range(plants):
    plant = plants["anubias-test"]  # 30 to 80 mm, on a short stalk of an eighth of that
    left, top, right, bottom = box(drawn_points(closeup("anubias-test", plant), "plant"))
    assert right - left == pytest.approx(55 * 1.12, rel=0.02)
    assert bottom - top == pytest.approx((18 + 45) / 2, rel=0.03)


def test_a_ring_has_the_leaves_of_the_record(plants):
    root = ET.fromstring(closeup("egeria-test", plants["egeria-test"]))  # 4 to 6 in a ring
    assert len(list(root.iter("use"))) == 5


def test_the_same_each_time(plants, pictures):
    for slug in ("rotala-test", "moss-test", "lemna-test", "sword-test"):
        assert drawing(slug, plants[slug]) == pictures[slug, "tank"]
        assert closeup(slug, plants[slug]) == pictures[slug, "near"]


def test_no_traits_no_picture(plants):
    bare = plants["rotala-test"].model_copy(update={"traits": None})
    assert drawing("x", bare) is None
    assert above("x", bare) is None
    assert closeup("x", bare) is None


def test_only_what_floats_is_shown_from_above(plants, pictures):
    for slug, plant in plants.items():
        assert ((slug, "above") in pictures) == (plant.traits.draw in FLOATING)


def test_a_smooth_curve_is_that_of_catmull_and_rom():
    """Their defining property: at each point the curve runs parallel to the line between its neighbours."""
    points = [(0.0, 0.0), (1.0, 2.0), (3.0, 3.0), (4.0, 1.0)]
    pieces = list(controls(points))
    for i in (1, 2):
        arriving, leaving = pieces[i - 1], pieces[i]
        chord = tuple((points[i + 1][k] - points[i - 1][k]) / 6 for k in (0, 1))
        assert tuple(leaving[0][k] - points[i][k] for k in (0, 1)) == pytest.approx(chord)
        assert tuple(points[i][k] - arriving[1][k] for k in (0, 1)) == pytest.approx(chord)

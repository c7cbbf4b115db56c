"""The comparison, the table, and growth against light: what the build writes is what the records say."""

import json
import math
import re
from html.parser import HTMLParser

import pytest

from scripts.drawings.draw import drawing
from scripts.pages.cite import Citations
from scripts.pages.plants.all_plants_table import COLUMNS, LIGHTS, light_class, line
from scripts.pages.plants.compare_data import compare_data
from scripts.pages.plants.growth_light import group
from scripts.pages.plants.growth_picture import Axis
from scripts.pages.plants.growth_places import (
    BOTTOM,
    HEIGHT,
    LEFT,
    MARK,
    ROOM,
    WIDTH,
    PicturePoint,
    spread_out,
)
from scripts.pages.plants.same_scale import view_of
from scripts.pages.plants.side_by_side import UNKNOWN, Cell, ComparedPlant, differ
from scripts.pages.plants.side_parts import size_classes
from scripts.pages.plants.side_rows import ROWS
from scripts.records.claim import Range
from scripts.records.growth_forms import GROWTH_FORM_OF_DRAWING, GROWTH_FORMS, growth_form
from scripts.records.traits import Draw
from tests.effort import long_run


@pytest.fixture(scope="module")
def data(library):
    return json.loads(compare_data(library))


def a_range(low, high):
    return Range(low=low, high=high, source="common-practice", sure="reported")


def test_every_plant_has_a_cell_and_words_for_every_row(data, library):
    assert data["plants"].keys() == library.plants.keys()
    for plant in data["plants"].values():
        assert len(plant["cells"]) == len(plant["words"]) == len(data["rows"])
        assert all(plant["cells"])


def test_cells_carry_their_figures_and_source_marks(data, library):
    at = {key: number for number, (_, key, _) in enumerate(data["rows"])}
    for slug, plant in library.plants.items():
        cells = data["plants"][slug]["cells"]
        claim = plant.needs.dli_mol
        assert (claim.sure.replace("-", " ") if claim else str(UNKNOWN)) in cells[at["dli_mol"]]
        assert claim or not plant.offered
        tissue = plant.nitrogen.tissue_n_percent if plant.nitrogen else None
        assert (tissue is None) == (cells[at["tissue_n"]] == str(UNKNOWN))
        for key in re.findall(r'href="#source-([a-z0-9-]+)"', "".join(cells)):
            assert key in data["sources"]


def test_needs_are_drawn_on_one_scale(data):
    """The ticks under each bar of a row are the same for every plant."""
    for number, (group_name, key, _) in enumerate(data["rows"]):
        if group_name == "What it needs":
            ticks = {
                tuple(re.findall(r'x="(\d+)" y="31">([^<]+)<', plant["cells"][number]))
                for plant in data["plants"].values()
                if plant["words"][number] is not None
            }
            assert len(ticks) == 1, key


def test_pieces_are_well_formed_and_carry_no_script_or_style(data):
    class Strict(HTMLParser):
        def __init__(self):
            super().__init__()
            self.open = []

        def handle_starttag(self, tag, attributes):
            assert tag not in ("script", "style", "img", "iframe")
            assert not [name for name, _ in attributes if name == "style" or name.startswith("on")]
            if tag != "br":
                self.open.append(tag)

        def handle_startendtag(self, tag, attributes):
            self.handle_starttag(tag, attributes)
            self.open.pop()

        def handle_endtag(self, tag):
            assert self.open.pop() == tag

    for slug, plant in data["plants"].items():
        for piece in (*plant["cells"], *plant["apart"].values()):
            reader = Strict()
            reader.feed(piece)
            reader.close()
            assert not reader.open, f"{slug}: {piece}"


def test_a_text_of_a_record_cannot_become_markup(library):
    """A record may say <b> and the reader sees just that."""
    plant = library.plants["lemna-minor"]
    sly = plant.model_copy(
        update={"looks": plant.looks.model_copy(update={"text": "<script>alert(1)</script> & <b>"})}
    )
    plant_shown = ComparedPlant(
        "lemna-minor", sly, Citations(library.sources), library.vocabulary, library.rules
    )
    row = next(row for row in ROWS if row.key == "looks")
    html = str(row.cell(plant_shown).html)
    assert "<script" not in html
    assert "<b>" not in html
    assert "alert" in html


def test_a_row_differs_where_no_word_fits_all():
    def cell(*words):
        return Cell(UNKNOWN, words)

    assert differ([cell("round"), cell("linear")])
    assert not differ([cell("round"), cell("round")])
    assert not differ([cell("ring of 3", "ring of 4"), cell("ring of 4", "ring of 5")])
    assert not differ([cell("round"), Cell(UNKNOWN)])
    assert differ([cell("a", "b"), cell("b", "c"), cell("c", "a")])


@pytest.mark.parametrize(
    ("one", "other", "apart"),
    [
        ((1, 3), (4, 8), True),
        ((1, 4), (3, 8), False),
        ((10, 35), (30, 58), False),
        ((0.6, 5), (15, 30), True),
        ((0, 2), (1, 3), False),
        ((5, 5), (5, 5), False),
    ],
)
def test_size_classes_part_only_ranges_that_do_not_overlap(one, other, apart):
    assert set(size_classes(*one)).isdisjoint(size_classes(*other)) is apart


def test_overlapping_figures_of_real_plants_are_never_called_different(data, library):
    """Against plain arithmetic on the records: 'differs' must mean that ranges do not meet."""
    at = next(number for number, (_, key, _) in enumerate(data["rows"]) if key == "leaf_length_mm")
    plants = list(library.plants.items())
    apart = 0
    for slug, plant in plants:
        for other_slug, other in plants:
            one, two = plant.traits.leaf_length_mm, other.traits.leaf_length_mm
            meet = one.low <= two.high and two.low <= one.high
            words = (set(data["plants"][key]["words"][at]) for key in (slug, other_slug))
            if set.isdisjoint(*words):
                assert not meet, (slug, other_slug)
                apart += 1
    assert apart > 1000


@long_run()
def test_drawings_of_one_comparison_share_their_scale(library):
    """Width of every view, in millimetres, is that of the tank and its rules."""
    widths, bottoms = set(), []
    for slug, plant in library.plants.items():
        picture = drawing(slug, plant)
        _, top, width, height = map(float, view_of(picture).split())
        widths.add(width)
        whole = float(re.search(r'viewBox="0 0 [\d.]+ ([\d.]+)"', picture)[1])
        bottoms.append(math.isclose(top + height, whole, abs_tol=0.2))
    assert len(widths) == 1
    assert all(bottoms)


def test_the_table_has_a_row_a_plant_and_sorts_by_the_middle(library):
    made = [line(slug, plant, library) for slug, plant in library.plants.items()]
    at = [column.key for column in COLUMNS].index("light")
    for one in made:
        assert len(one.cells) == len(COLUMNS)
        claim = one.plant.needs.dli_mol
        assert claim or not one.plant.offered
        assert one.cells[at].sorts == (claim and pytest.approx((claim.low + claim.high) / 2))
        assert one.growth_form in GROWTH_FORMS
        assert one.light in LIGHTS


def test_what_is_not_known_has_nothing_to_sort_by(library):
    plant = library.plants["lemna-minor"]
    blank = plant.model_copy(
        update={"growth": plant.growth.model_copy(update={"doubling_days": None})}
    )
    at = [column.key for column in COLUMNS].index("doubling")
    cell = line("lemna-minor", blank, library).cells[at]
    assert (cell.shown, cell.sorts) == ("not known", None)


def test_light_classes_leave_no_gap():
    assert light_class(None) == "not-known"
    for low, key in (
        (0.0, "weak"),
        (0.99, "weak"),
        (1.0, "modest"),
        (1.99, "modest"),
        (2.0, "bright"),
        (19.0, "bright"),
    ):
        assert light_class(a_range(low, 20)) == key


def test_every_way_to_draw_has_a_look(library):
    assert GROWTH_FORM_OF_DRAWING.keys() == set(Draw.__args__)
    assert set(GROWTH_FORM_OF_DRAWING.values()) == set(GROWTH_FORMS)
    assert growth_form(library.plants["salvinia-auriculata"]) == "floating"
    assert growth_form(library.plants["rotala-rotundifolia"]) == "upright"


def test_marks_of_a_picture_do_not_cover_each_other():
    homes = [PicturePoint(100 + number % 3, 200 + number % 2) for number in range(40)]
    places = spread_out(homes)
    for number, one in enumerate(places):
        for other in places[:number]:
            assert math.dist(one, other) >= ROOM
        assert one.x - MARK >= LEFT
        assert one.x + MARK <= WIDTH
        assert one.y + MARK <= HEIGHT - BOTTOM
    assert places[0] == homes[0]


def test_more_marks_than_fit_still_make_a_picture():
    homes = [PicturePoint(100 + number % 30, 200) for number in range(500)]
    assert spread_out(homes) == homes


def test_an_axis_goes_by_equal_factors():
    axis = Axis(1, 100, 0, 200)
    assert axis.at(1) == pytest.approx(0)
    assert axis.at(10) == pytest.approx(100)
    assert axis.at(100) == pytest.approx(200)


def test_growth_against_light_shows_every_plant_once(library, site):
    text = (site / "plants" / "growth" / "index.html").read_text(encoding="utf-8")
    for habit in library.vocabulary["habit"]:
        found = group(habit, library)
        mine = {slug for slug, plant in library.offered().items() if plant.habit == habit}
        assert {one.slug for one in found.items} | {slug for slug, _ in found.missing} == mine
        middles = [one.doubling.low * one.doubling.high for one in found.items]
        assert middles == sorted(middles)
        for one in found.items:
            assert str(found.picture).count(f'href="#spot-{one.slug}"') == 1
            assert text.count(f'<li id="spot-{one.slug}"><a href="../{one.slug}/">') == 1
        for slug, _ in found.missing:
            assert f'href="../{slug}/"' in text
            assert f'href="../{slug}/"' not in str(found.picture)
    assert "Not known, so not in the picture" in text

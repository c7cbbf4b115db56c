"""The drawings on the plant's page."""

from scripts.pages.plants.plant_page import plant_page


def page(library, plants, slug):
    return plant_page(slug, library._replace(plants={slug: plants[slug]}))


def test_the_tank_stands_between_the_verdict_and_how_to_know_it(library, plants):
    text = page(library, plants, "ludwigia-test")
    places = [
        text.index(mark) for mark in ('class="verdict"', "<svg", "**How to know it.**", "mm</text>")
    ]
    assert places == sorted(places)
    assert "Drawn from the record’s traits, to scale in a tank 36\u00a0cm (14 in) high." in text
    assert "those on the left turned to show the underside" in text
    assert "From above" not in text


def test_a_floating_plant_is_shown_from_above_too(library, plants):
    text = page(library, plants, "salvinia-test")
    assert text.count('role="img"') == 3
    assert "From above, over a rule of 10 cm (4 in)." in text


def test_a_record_without_traits_has_its_page_without_drawings(library, plants):
    bare = {"rotala-test": plants["rotala-test"].model_copy(update={"traits": None})}
    text = page(library, bare, "rotala-test")
    assert "How to know it" in text
    assert 'role="img"' not in text


def test_a_plant_that_outgrows_the_picture_is_said_to(library, plants):
    text = page(library, plants, "vallisneria-test")  # 20 to 60 cm; water of 29 cm
    remark = "It can grow longer (60 cm) than this water is deep (29 cm)."
    assert text.replace("\u00a0", " ").count(remark) == 3  # title, label, below the picture
    assert "It can grow" not in page(library, plants, "anubias-test")

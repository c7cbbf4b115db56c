"""A drawing is made again only where something that it shows has changed."""

import pytest

from scripts.pages.plants import drawn
from scripts.records.noted_reads import THERE, Noted, noted_library
from scripts.setup import kept
from tests.effort import share_of

SLUG = "lemna-minor"  # it floats, so that there are all drawings of it
MAKERS = {
    drawn.in_tank: "draw:drawing",
    drawn.from_above: "above:above",
    drawn.close_up: "closeup:closeup",
    drawn.close_up_words: "closeup:shown",
}


def test_what_draws_reads_nothing_else_of_a_record(library):
    noted = Noted()
    plants = noted_library(library, noted).plants
    for slug in share_of([slug for slug, plant in library.plants.items() if plant.traits], 5):
        noted.clear()
        made = [drawn.drawn(maker, slug, plants[slug]) for maker in MAKERS.values()]
        assert all(made) or library.plants[slug].habit != "floater", slug
        assert made[0].startswith("<svg"), slug
        read = set().union(*noted.values()) - {THERE}
        assert read <= set(drawn.DRAWN_OF), slug


@pytest.fixture
def plant(library):
    return library.plants[SLUG]


@pytest.fixture
def drawn_now(monkeypatch, tmp_path):
    """The makers that had to draw, in their order; of what is kept there is nothing at first."""
    monkeypatch.setattr(kept, "FOLDER", tmp_path / "kept")
    makers = []

    def note(maker, slug, plant):
        makers.append(maker)
        return f"{maker} of {slug}"

    monkeypatch.setattr(drawn, "drawn", note)
    return makers


def test_other_words_on_its_page_leave_the_drawings_as_they_are(plant, drawn_now):
    before = [make(SLUG, plant) for make in MAKERS]
    assert drawn_now == list(MAKERS.values())
    assert before == [f"{maker} of {SLUG}" for maker in drawn_now]
    other = plant.model_copy(update={"verdict": "Right elsewhere.", "trade_names": ["Another"]})
    assert [make(SLUG, other) for make in MAKERS] == before
    assert drawn_now == list(MAKERS.values())


@pytest.mark.parametrize("field", drawn.DRAWN_OF)
def test_what_a_drawing_shows_has_it_drawn_anew(plant, field, drawn_now, library):
    values = [getattr(one, field) for one in library.plants.values() if one.traits]
    another = next(value for value in values if value != getattr(plant, field))
    drawn.in_tank(SLUG, plant)
    drawn.in_tank(SLUG, plant.model_copy(update={field: another}))
    assert drawn_now == ["draw:drawing"] * 2

import pytest

from scripts.drawings.above import above
from scripts.drawings.closeup import closeup
from scripts.drawings.contact_sheet import samples
from scripts.drawings.draw import drawing
from scripts.setup.paths import ROOT
from tests.effort import share_of

SAMPLES = ROOT / "tests" / "drawings" / "plants.yml"


@pytest.fixture(scope="session")
def plants(library):
    """The test plants, and every record that has traits, or a share of them."""
    records = [(slug, plant) for slug, plant in library.plants.items() if plant.traits]
    return samples(SAMPLES) | dict(share_of(records, 5))


@pytest.fixture(scope="session")
def pictures(plants):
    """Every picture by the plant's slug and its kind."""
    makers = {"tank": drawing, "above": above, "near": closeup}
    return {
        (slug, kind): svg
        for slug, plant in plants.items()
        for kind, make in makers.items()
        if (svg := make(slug, plant)) is not None
    }

"""Small pictures stand in the lists of plants that an answer and the names' index make."""

import re

from calculators.core.declare import Spec
from calculators.core.listing import load_all
from calculators.core.paint.fragment import fragment
from calculators.core.run import compute
from scripts.pages.plants.thumbnails import thumbnails
from scripts.pages.plants.trade_names import names_page

USED = re.compile(r'<svg class="thumb"[^>]*><use href="([^"]*)assets/thumbnails\.svg#([\w-]+)"/?>')


def test_every_plant_of_a_pick_has_its_picture():
    spec: Spec = load_all()["pick"]
    computed = compute("pick", {})
    outputs = computed.answer["outputs"]
    used = USED.findall(fragment(spec, computed))
    assert {root for root, _ in used} == {"../../"}
    assert [slug for _, slug in used] == [
        row["plant"] for key in ("ranked", "together") for row in outputs[key] or []
    ]
    assert used


def test_a_name_shows_plants_that_it_may_stand_for(library):
    drawn = set(re.findall(r'id="([\w-]+)"', thumbnails(library)))
    items = re.findall(r"<li>.*?</li>", names_page(library))
    assert len(items) == len(library.names)
    shown = [[slug for _, slug in USED.findall(item)] for item in items]
    assert all(slugs and set(slugs) <= drawn for slugs in shown if slugs)
    assert sum(len(slugs) > 1 for slugs in shown) > len(shown) / 4

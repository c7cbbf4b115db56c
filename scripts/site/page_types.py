"""Every type of page that the book has, one address each: what pictures are taken of, and what axe reads.

The demo tanks stand on the shelf meanwhile. A test holds the list to the pages that the build makes.
"""

from playwright.sync_api import Page

DEMO_TANK = "reading-room"
PAGE_TYPES = {
    "home": "",
    "plants": "plants/",
    "plant": "plants/hygrophila-difformis/",
    "table": "plants/table/",
    "growth": "plants/growth/",
    "compare": "compare/?plants=hygrophila-difformis,ceratophyllum-demersum",
    "names": "names/",
    "name": "names/amazon-sword/",
    "identify": "identify/",
    "search": "search/?q=ambulia",
    "problems": "problems/",
    "all-problems": "problems/all/",
    "problem": "problems/ammonia-emergency/",
    "symptoms": "problems/symptoms/",
    "key": "problems/key/",
    "danger": "danger/",
    "calculators": "calculators/",
    "calculator": "calculators/stocking/",
    "forecast": "calculators/nitrogen-forecast/",
    "picker": "calculators/pick/",
    "dosing": "calculators/dosing/",
    "photo": "calculators/surface-cover/",
    "model": "nitrogen-model/",
    "animals": "animals/",
    "animal": "animals/paracheirodon-innesi/",
    "guides": "guides/",
    "guide": "guides/cuttings/",
    "law": "rules/",
    "rule": "rules/eu-union-list/",
    "place": "rules/gb/",
    "sources": "sources/",
    "data": "data/",
    "about": "about/",
    "board": "shelf/",
    "tank": f"shelf/tank/#{DEMO_TANK}",
    "new-tank": "shelf/new/",
    "round": "shelf/round/",
    "paper": f"shelf/paper/#{DEMO_TANK}",
    "missing": "404.html",
}
# What shows that a page says all it has to say, by a part that the page may have.
WHOLE = {
    "#calculator": "#calculator[data-answered]",
    "#board": "#board[data-shown=anew]",
    "#tank-page": "#answer .notes li",
    "#round": "#round-tanks > li",
    "#paper": ".paper",
}


def come_to_rest(page: Page) -> None:
    """Until the page says all that it has to say, and nothing is asked for any more."""
    for part, whole in WHOLE.items():
        if page.locator(part).count():
            page.locator(whole).first.wait_for(state="attached")
    page.wait_for_load_state("networkidle")

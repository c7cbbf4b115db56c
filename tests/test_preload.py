"""Each page names the files that its scripts load, and no page names one of another's part."""

import re

from scripts.site.joined_scripts import Graph, graph_of, joined
from scripts.site.preload import files_for, with_preloads

HEAD = '<html><head>\n<script type="module" src="{root}assets/page.js"></script>\n</head>'
SMALL = Graph(
    files={"page.js": [], "shelf.js": ["page.js"], "shelf/board.js": ["page.js", "shelf.js"]},
    modules={
        "page.js": "page.js",
        "shelf/switch.js": "shelf.js",
        "shelf/board.js": "shelf/board.js",
    },
    packages={},
)


def test_a_part_is_named_only_where_its_place_stands():
    assert files_for(frozenset(), SMALL) == ["shelf.js"]
    assert files_for(frozenset(["board"]), SMALL) == ["shelf/board.js", "shelf.js"]
    page = HEAD.format(root="../") + '<div id="board"></div>'
    lines = with_preloads(page, SMALL)
    assert lines.count('<link rel="modulepreload" href="../assets/') == 2
    assert lines.index("modulepreload") < lines.index("<script")
    assert with_preloads("<p>no script</p>", SMALL) == "<p>no script</p>"


def test_the_board_and_a_calculator_name_their_own_files_and_what_every_page_loads():
    graph = graph_of(joined())
    board, calculator = (files_for(frozenset([name]), graph) for name in ("board", "calculator"))
    assert {"shelf/board.js", "shelf.js"} <= set(board)
    assert {"calculator.js", "shelf.js"} <= set(calculator)
    assert not {"calculator.js", "shelf/round.js", "page.js"} & set(board)


def test_only_a_calculators_page_begins_python_and_what_begins_it_loads_nothing(site):
    graph = graph_of(joined())
    assert graph.files["begin-python.js"] == []
    begins = re.compile(r'<script type="module" async src="[^"]*assets/begin-python\.js"></script>')
    for page in site.rglob("*.html"):
        of_calculator = page.parent.parent.name == "calculators"
        assert bool(begins.search(page.read_text(encoding="utf-8"))) == of_calculator, page

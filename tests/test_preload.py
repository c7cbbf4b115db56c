"""Each page names the modules that its scripts load, and no page names one of another's part."""

from scripts.setup.paths import DOCS
from scripts.site.preload import modules_for, with_preloads

HEAD = '<html><head>\n<script type="module" src="{root}assets/page.js"></script>\n</head>'


def made(folder, **files):
    for name, text in files.items():
        (folder / f"{name}.js").write_text(text, encoding="utf-8")


def test_modules_are_followed_once_and_a_part_only_where_its_place_stands(tmp_path):
    made(
        tmp_path,
        page='import { a } from "./a.js";\nconst PARTS = {\n  "#board": () => import("./b.js"),\n};\n',
        a='import { c } from "./c.js";\n',
        b='import { c } from "./c.js";\nimport { x } from "./library.js";\n'
        'const later = () => import("./later.js"); // soon\nconst never = () => import("./d.js");\n',
        c='export * from "./a.js";\n',
        d="export {};\n",
        later='import { c } from "./c.js";\nimport { e } from "./e.js";\n',
        e="export {};\n",
    )
    assert modules_for(frozenset(), tmp_path) == (["a.js", "c.js"], [])
    first, soon = modules_for(frozenset(["board"]), tmp_path)
    assert (first, soon) == (["a.js", "c.js", "b.js", "library.js"], ["later.js", "e.js"])
    page = HEAD.format(root="../") + '<div id="board"></div>'
    lines = with_preloads(page, tmp_path).count('<link rel="modulepreload" href="../assets/')
    assert lines == 4
    assert '<meta name="modules-soon" content="later.js e.js">' in with_preloads(page, tmp_path)
    assert with_preloads("<p>no script</p>", tmp_path) == "<p>no script</p>"


def test_the_board_names_its_own_modules_and_those_of_the_switch():
    first, soon = modules_for(frozenset(["board"]))
    assert {"runtime.js", "shelf/board.js", "shelf/standings.js", "shelf/switch.js"} <= set(first)
    assert {"shelf/store.js", "shelf/log-sheet.js", "shelf/copy.js"} <= set(soon)
    found = [*first, *soon]
    assert len(found) == len(set(found))
    assert "shelf/round.js" not in found
    others = {"idb.js", "uqr.js", "minisearch.js"}
    assert all((DOCS / "assets" / name).is_file() for name in set(found) - others)

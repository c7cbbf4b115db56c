"""How the house stands: read from the source by scripts/structure/, which is tested on small trees first."""

import ast
import re

import pytest

from scripts.setup.paths import DOCS, ROOT
from scripts.structure.circles import circles, reach
from scripts.structure.modules import graph, read_modules
from scripts.structure.rooms import (
    Import,
    across,
    backwards,
    calculator_rooms,
    serving_one,
    stray,
)
from scripts.structure.script_imports import script_graph
from scripts.structure.sizes import (
    classes_named_twice,
    files_named_twice,
    long_functions,
    long_modules,
)
from tests.own_modules import own_modules

DECLARED = """
from calculators.core.declare import calculator


@calculator("tank")
def tank():
    pass
"""


@pytest.fixture(scope="module")
def modules():
    return own_modules()


@pytest.fixture
def house(tmp_path):
    """A maker of small trees: ``house({"calculators/tank/words.py": "..."})`` gives their modules."""

    def build(files):
        for name, text in files.items():
            path = tmp_path / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
        return read_modules(tmp_path)

    return build


def test_no_circle_of_imports(modules):
    assert len(modules) > 300
    assert circles(graph(modules)) == []


def test_no_circle_among_the_scripts_of_the_browser():
    scripts = script_graph(DOCS / "assets")
    assert len(scripts) > 100
    assert sum(map(len, scripts.values())) > 300
    assert circles(scripts) == []


def test_a_circle_among_scripts_is_seen_where_one_part_comes_while_it_runs(tmp_path):
    texts = {
        "a.js": 'import {\n  one,\n} from "./part/b.js";\n',
        "part/b.js": '// import "./d.js";\nexport const one = () => import("../c.js");\n',
        "c.js": 'export { one } from "./a.js";\nimport x from "library";\n',
        "d.js": '/** @param {import("./a.js").One} one */\nimport "./a.js";\nimport "../out.js";\n',
    }
    (tmp_path / "part").mkdir()
    for name, text in texts.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    scripts = script_graph(tmp_path)
    assert scripts["d.js"] == {"a.js"}
    assert circles(scripts) == [["a.js", "c.js", "part/b.js"]]


def test_no_room_imports_a_calculator_or_the_shelf_or_the_door_of_the_page(modules):
    assert len(calculator_rooms(modules)) >= 20
    assert across(modules) == []


def test_every_module_of_the_calculators_has_a_home(modules):
    assert stray(modules) == []


def test_what_one_room_alone_uses_stands_in_that_room(modules):
    assert any(name.startswith("calculators.science.") for name in modules)
    assert serving_one(modules) == {}


def test_data_flows_from_species_to_pages_and_never_back(modules):
    assert backwards(modules) == []


def test_loading_the_records_needs_no_check(modules):
    reached = reach(graph(modules), "scripts.records.load")
    assert "scripts.records.plant" in reached
    assert not [name for name in reached if name.startswith("scripts.records.checks")]


def test_a_circle_through_an_import_inside_a_function_is_seen(house):
    modules = house(
        {
            "scripts/a.py": "from scripts import b\n",
            "scripts/b.py": "import scripts.c\n",
            "scripts/c.py": "def late():\n    from scripts.a import name\n    return name\n",
            "scripts/d.py": "from scripts.a import name\n",
            "scripts/__init__.py": "",
        }
    )
    assert circles(graph(modules)) == [["scripts.a", "scripts.b", "scripts.c"]]


def test_rooms_are_told_apart(house):
    modules = house(
        {
            "calculators/__init__.py": "",
            "calculators/tank/calculator.py": DECLARED,
            "calculators/tank/words.py": (
                "from calculators.light import lamp\nfrom calculators.science import gas\n"
            ),
            "calculators/light.py": DECLARED + "from calculators.science import lamps\n",
            "calculators/loose.py": "from calculators import bridge\n",
            "calculators/science/__init__.py": "",
            "calculators/science/gas.py": "",
            "calculators/science/lamps.py": "",
            "calculators/science/log.py": "from calculators.shelf import paper\n",
            "calculators/shelf/__init__.py": "",
            "calculators/shelf/paper.py": (
                "from calculators.light import lamp\nfrom calculators.science import lamps\n"
            ),
            "calculators/science/unused.py": "",
            "calculators/core/declare.py": "calculator = None\n",
            "scripts/records/load.py": "from calculators.tank.calculator import tank\n",
            "scripts/tables/plant_rows.py": "from scripts.pages.page import page\n",
            "scripts/pages/page.py": "from calculators.tank.calculator import tank\n",
        }
    )
    assert set(calculator_rooms(modules).values()) == {"calculators.tank", "calculators.light"}
    assert across(modules) == [
        Import("calculators.science.log", "calculators.shelf.paper"),
        Import("calculators.shelf.paper", "calculators.light"),
        Import("calculators.tank.words", "calculators.light"),
    ]
    assert stray(modules) == ["calculators.loose"]
    assert serving_one(modules) == {
        "calculators.science.gas": ["tank"],
        "calculators.science.log": [],
        "calculators.science.unused": [],
    }
    assert set(backwards(modules)) == {
        Import("scripts.records.load", "calculators.tank.calculator"),
        Import("scripts.tables.plant_rows", "scripts.pages.page"),
    }


def test_sizes_and_names_are_counted(house):
    body = "\n".join(f"    x = {number}" for number in range(25))
    modules = house(
        {
            "scripts/long.py": f"class Row:\n    pass\n\n\ndef over():\n{body}\n"
            + "# more\n" * 130,
            "scripts/short.py": "class Row:\n    pass\n\n\ndef under():\n    return 1\n",
        }
    )
    assert long_functions(modules) == [("scripts.long.over", 26)]
    assert long_modules(modules) == [("scripts.long", 160)]
    assert classes_named_twice(modules) == {"Row": ["scripts.long", "scripts.short"]}
    alike = house(
        {
            "scripts/pages/marks.py": "",
            "calculators/core/marks.py": "",
            "scripts/pages/words.py": "",
            "calculators/core/words.py": "",
            "scripts/core/__init__.py": "",
        }
    )
    assert files_named_twice(alike) == {"marks": ["calculators.core.marks", "scripts.pages.marks"]}


def test_no_class_name_means_two_things(modules):
    assert classes_named_twice(modules) == {}


def test_the_recipes_name_files_that_are_there():
    pages = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *ROOT.glob("*/README.md")]
    named = {
        (page.relative_to(ROOT).as_posix(), file)
        for page in pages
        for file in re.findall(r"`([\w./-]+\.(?:py|m?js))`", page.read_text(encoding="utf-8"))
    }
    rooms = ("calculators", "docs", "scripts", "species", "tests")
    there = [f"/{path.relative_to(ROOT).as_posix()}" for room in rooms for path in files_of(room)]
    assert len(named) > 50
    assert [
        one for one in sorted(named) if not any(path.endswith(f"/{one[1]}") for path in there)
    ] == []


def files_of(room):
    """The scripts and modules of a room, in any language."""
    return [path for ends in ("py", "js", "mjs") for path in (ROOT / room).rglob(f"*.{ends}")]


def test_no_file_of_one_room_is_named_like_one_of_another(modules):
    assert files_named_twice(modules) == {}


def test_a_calculator_is_known_by_its_declaration(modules):
    declared = [
        node.name
        for name in calculator_rooms(modules)
        for node in modules[name].tree.body
        if isinstance(node, ast.FunctionDef)
        if any(isinstance(mark, ast.Call) for mark in node.decorator_list)
    ]
    listed = {name.rpartition(".")[2] for name in calculator_rooms(modules).values()}
    assert listed == set(declared)

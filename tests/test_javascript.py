"""The browser's glue: linted and type-checked like the Python, by tools that the npm lock names."""

import re

import pytest

from scripts.setup.node import browser_parts, node
from scripts.setup.paths import ROOT

CHECKS = {
    "types": ("typescript/bin/tsc", "-p", "scripts/javascript/tsconfig.json", "--pretty", "false"),
    "lint": ("@biomejs/biome/bin/biome", "lint", "--error-on-warnings", "--reporter=github"),
}


def check(words, cwd=ROOT):
    tool, *more = words
    return node(str(browser_parts(tools=True) / tool), *more, cwd=cwd)


@pytest.mark.parametrize("words", CHECKS.values(), ids=CHECKS)
def test_is_clean(words):
    done = check(words)
    assert done.returncode == 0, f"{done.stdout}{done.stderr}"


@pytest.mark.parametrize(
    ("tool", "name", "text", "complaint"),
    [
        ("types", "slip.js", 'document.querySelector("input").valeu = "1";\n', r"TS2551.*valeu"),
        (
            "lint",
            "slip.js",
            "export const twice = (one) => {\n  debugger;\n  return one;\n};\n",
            "noDebugger",
        ),
        ("lint", "slip.css", "a { colour: red; }\n", "noUnknownProperty"),
    ],
)
def test_the_checks_find_a_slip(tool, name, text, complaint, tmp_path):
    """The same settings on a folder that holds one slip."""
    for part in ("biome.json", "scripts/javascript/tsconfig.json", "scripts/javascript/types.d.ts"):
        (tmp_path / part).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / part).write_bytes((ROOT / part).read_bytes())
    (tmp_path / "docs" / "assets").mkdir(parents=True)
    (tmp_path / "docs" / "assets" / "page.js").write_text("export {};\n", encoding="utf-8")
    (tmp_path / "docs" / "assets" / name).write_text(text, encoding="utf-8")
    output = check(CHECKS[tool], tmp_path).stdout
    assert re.search(complaint, output), output


@pytest.mark.parametrize(
    ("name", "licence", "most"),
    [
        ("finding.js", "Copyright 2022 Luca Ongaro", 30_000),
        ("shelf.js", "Copyright (c) 2016, Jake Archibald", 50_000),
        ("codes.js", "Copyright (c) Project Nayuki", 20_000),
    ],
)
def test_a_library_is_served_small_with_its_licence(site, name, licence, most):
    text = (site / "assets" / name).read_text(encoding="utf-8")
    assert len(text) < most
    assert licence in text


def test_nothing_of_the_tools_ships(site):
    assert not list(site.rglob("*.d.ts"))
    assert not list(site.rglob("biome.json"))


def test_serving_needs_none_of_the_tools():
    """What only tests need is marked so in the lock, and left out without ``tools``."""
    import json

    lock = json.loads((ROOT / "scripts/locks/npm/package-lock.json").read_text(encoding="utf-8"))
    for name in ("typescript", "@biomejs/biome", "axe-core", "jsqr"):
        assert lock["packages"][f"node_modules/{name}"]["dev"]
    for name in ("idb", "minisearch", "pyodide", "@rollup/wasm-node", "terser", "uqr"):
        assert "dev" not in lock["packages"][f"node_modules/{name}"]

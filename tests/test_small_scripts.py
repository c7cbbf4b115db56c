"""Scripts are served small, and whole: each still gives out what the others import from it."""

import re

import pytest

from scripts.setup.paths import DOCS
from scripts.setup.say import Missing
from scripts.site import small_scripts
from scripts.site.small_scripts import shrink_scripts

EXPORTED = re.compile(
    r"^export (?:default )?(?:async )?(?:function\*?|const|let|class) (\w+)", re.MULTILINE
)
GIVEN_OUT = re.compile(
    r"export(?: (?:default )?(?:async )?(?:function\*?|const|let|class) (\w+)|\{([^}]*)\})"
)


def given_out(text):
    names = set()
    for name, group in GIVEN_OUT.findall(text):
        names |= {name} if name else {part.split(" as ")[-1].strip() for part in group.split(",")}
    return names


def test_every_script_is_lighter_and_gives_out_what_it_gave(site):
    sources = [path for path in (DOCS / "assets").rglob("*.js")]
    assert len(sources) > 80
    for source in sources:
        served = site / source.relative_to(DOCS)
        text, small = source.read_text(encoding="utf-8"), served.read_text(encoding="utf-8")
        assert len(small) < len(text), source.name
        assert set(EXPORTED.findall(text)) <= given_out(small), source.name


def test_a_script_is_made_once_and_a_broken_one_is_said(tmp_path, monkeypatch):
    monkeypatch.setattr(small_scripts, "MADE", tmp_path / "made")
    assets = tmp_path / "site" / "assets"
    assets.mkdir(parents=True)
    script = assets / "page.js"
    script.write_text("// why\nexport const first = (number) => number + 1;\n", encoding="utf-8")
    (assets / "idb.js").write_text("/* licence */\n", encoding="utf-8")
    shrink_scripts(tmp_path / "site", frozenset({"idb.js"}))
    small = script.read_text(encoding="utf-8")
    assert "why" not in small
    assert (assets / "idb.js").read_text(encoding="utf-8") == "/* licence */\n"
    script.write_text("// why\nexport const first = (number) => number + 1;\n", encoding="utf-8")
    monkeypatch.setattr(small_scripts, "shrink", lambda files: pytest.fail(f"made again: {files}"))
    shrink_scripts(tmp_path / "site", frozenset({"idb.js"}))
    assert script.read_text(encoding="utf-8") == small
    monkeypatch.undo()
    monkeypatch.setattr(small_scripts, "MADE", tmp_path / "made")
    script.write_text("export const = 1;\n", encoding="utf-8")
    with pytest.raises(Missing, match="could not be made small"):
        shrink_scripts(tmp_path / "site", frozenset({"idb.js"}))

"""The base theme's files in a built site: its style sheet becomes a layer of ours, the rest goes.

A rule in a layer gives way to every rule outside it, so that our style sheet need not outbid the
theme's. A browser that knows no layers shows our style sheet alone. Of the theme's rules those stay that
some page can use, a third of its weight. Nothing here imports the theme.
"""

import re
import shutil
from collections.abc import Collection
from functools import partial
from importlib.util import find_spec
from pathlib import Path, PurePath

from scripts.setup.kept import kept
from scripts.site.attributes import values_of

SHEETS = "assets/stylesheets/main.*.css"
NOT_USED = ("assets/stylesheets", "assets/javascripts", "assets/images")
PACKAGE = "material"
DRAWN_INSIDE = re.compile(
    r'url\("data:[^"]*"\)'
)  # no policy of ours lets a page draw from such an address


class ThemeChanged(Exception):
    """The theme has not the one style sheet that we know."""


def settled_theme(site: Path, classes: Collection[str]) -> str:
    """The theme's layer in one line, after its files are taken away from the site.

    ``classes`` are those that stand in the pages; our scripts add none of the theme's.

    Raises ``ThemeChanged``, or ``ValueError`` where the sheet is no CSS.
    """
    sheets = sorted(site.glob(SHEETS))
    if len(sheets) != 1:
        raise ThemeChanged(f"{SHEETS}: {len(sheets)} files, where one is expected")
    text = sheets[0].read_text(encoding="utf-8").removeprefix('@charset "UTF-8";')
    rules = text.split("/*# sourceMappingURL", 1)[0].rstrip("\n")
    rules = DRAWN_INSIDE.sub("none", rules)
    ingredients = f"{rules}\0{' '.join(sorted(classes))}"
    used = kept("theme", ingredients, partial(those_used, rules, classes))
    for folder in NOT_USED:
        shutil.rmtree(site / folder, ignore_errors=True)
    return f"@layer theme{{{' '.join(used.splitlines())}}}"


def those_used(rules: str, classes: Collection[str]) -> str:
    """As ``used_rules``, by what is imported only where the theme's sheet has to be read."""
    from scripts.site.used_rules import used_rules

    return used_rules(rules, classes)


def is_of_no_use(name: str) -> bool:
    """Whether a file that the theme brings goes anyway, by its path in the site; its sheet does not."""
    return name.startswith(NOT_USED) and not PurePath(name).match(SHEETS)


def classes_in(html: str) -> set[str]:
    """All classes that stand in a page."""
    return {name for value in set(values_of("class", html)) for name in value.split()}


def theme_templates() -> Path:
    """The folder of the theme's templates, found without importing it. Raises ``ThemeChanged``."""
    found = find_spec(PACKAGE)
    if found is None or not found.submodule_search_locations:
        raise ThemeChanged("the base theme is not installed")
    return Path(next(iter(found.submodule_search_locations))) / "templates"

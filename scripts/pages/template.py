"""The templates' environment: everything is escaped, and a misspelt field stops the build."""

import json
from collections.abc import Iterable, Mapping
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any
from urllib.parse import urlencode

from jinja2 import Environment, FileSystemBytecodeCache, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from calculators.core.numbers import show_plain
from calculators.core.wording import upper
from calculators.science.law.restricted import Restricted, once_a_place, place_in_words
from scripts.pages.escape import escape
from scripts.records.law_matches import Listing, restricted_at
from scripts.setup.paths import BUILD

FOLDER = Path(__file__).resolve().parents[1] / "templates"
COMPILED = BUILD / "templates"
# In an address: the keys whose figures are the book's; see docs/assets/borrowed.js.
FROM_BOOK = "from-book"


@cache
def environment() -> Environment:
    """The one environment of all page templates."""
    COMPILED.mkdir(parents=True, exist_ok=True)
    made = Environment(
        loader=FileSystemLoader(FOLDER),
        bytecode_cache=FileSystemBytecodeCache(str(COMPILED)),
        autoescape=True,
        finalize=escape,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    made.filters["day"] = day
    made.filters["restricted"] = restricted
    made.filters["in_words"] = place_in_words
    made.filters["front"] = front
    made.filters["query"] = query
    made.filters["starts"] = upper
    return made


def render(name: str, **context: Any) -> str:
    """Fill a template of scripts/templates."""
    return environment().get_template(name).render(**context)


def day(value: date | str) -> Markup:
    """A date, or a year, that stays on one line."""
    return Markup('<time datetime="{0}">{0}</time>').format(str(value))


def restricted(listed: Iterable[Listing]) -> list[Restricted]:
    """Where entries on law lists restrict a plant, once a place."""
    return once_a_place(map(restricted_at, listed))


def query(given: Mapping[str, float | str]) -> str:
    """Inputs of a calculator as the part of an address behind its page; none, nothing."""
    plain = {
        key: show_plain(value) if isinstance(value, float) else value
        for key, value in given.items()
    }
    return f"?{urlencode(plain)}" if given else ""


def book_query(given: Mapping[str, float | str]) -> Markup:
    """The same for figures that are this book's own: they are named, so that none passes for a keeper's."""
    return Markup(query({**given, FROM_BOOK: ",".join(given)}) if given else "")


def front(value: str) -> Markup:
    """A text for the page's front matter: a JSON string is a YAML string."""
    return Markup(json.dumps(" ".join(value.split()), ensure_ascii=False))

"""Pages of guides: the prose as people wrote it, its marks filled in."""

from collections.abc import Callable
from typing import Any

from markupsafe import Markup

from calculators.core.kept_together import NO_BREAK, kept_together
from calculators.core.listing import load_all
from calculators.core.paint.answer import rows
from calculators.core.run import run
from scripts.pages.cite import Citations
from scripts.pages.escape import escape
from scripts.pages.template import book_query, environment, render
from scripts.records.claim import Claim
from scripts.records.guide import MARK, SURE, Call, Guide, ProseMark, call
from scripts.records.load import Library
from scripts.records.raw_html import harmless


def guide_page(slug: str, library: Library) -> str:
    """One guide as Markdown, with its checklist on top and its sources below."""
    guide = library.guides[slug]
    cite = Citations(library.sources)
    fill = filler(cite, library)
    return render(
        "guide.md.j2",
        guide=guide,
        first=[Markup(filled(item, fill, escape)) for item in guide.first],
        body=Markup(filled(guide.body, fill, as_prose)),
        problems={key: library.problems[key] for key in guide.problems},
        words=library.vocabulary,
        cite=cite,
    )


def guides_page(library: Library) -> str:
    """The index of the guides, in the order that they give themselves."""
    return render("guides.md.j2", guides=in_order(library))


def as_prose(text: str) -> str:
    """What people wrote between marks: nothing raw, and each unit on the line of its number."""
    return kept_together(harmless(text))


def in_order(library: Library) -> list[tuple[str, Guide]]:
    """The guides with their slugs, in order."""
    return sorted(library.guides.items(), key=lambda item: item[1].order)


def filled(text: str, fill: Callable[[ProseMark], str], between: Callable[[str], str]) -> str:
    """A text with its marks filled in; what stands between them goes through ``between``."""
    pieces, end = [], 0
    for match in MARK.finditer(text):
        before = between(text[end : match.start()])
        if match[1] in SURE and before.endswith(" "):
            before = before[:-1] + NO_BREAK  # how sure stands on the line of what it is said of
        pieces += [before, fill(ProseMark(match[1], match[2], 0))]
        end = match.end()
    return "".join([*pieces, between(text[end:])])


def filler(cite: Citations, library: Library) -> Callable[[ProseMark], str]:
    """What a mark becomes in this page."""

    def fill(mark: ProseMark) -> str:
        if mark.kind in SURE:
            return sureness(mark, cite, library)
        asked = call(mark)
        return figure(asked) if mark.kind == "figure" else calculator_link(asked)

    return fill


def sureness(mark: ProseMark, cite: Citations, library: Library) -> str:
    """The same small mark that stands behind a record's claim."""
    claim = Claim.model_validate({"source": mark.source_keys(), "sure": mark.kind})
    parts: Any = environment().get_template("parts.j2").module
    return str(parts.mark(claim, cite, library.vocabulary))


def figure(asked: Call) -> str:
    """A figure with its unit, rounded as the calculator's page rounds it."""
    answer = run(asked.calculator, asked.inputs, typed=True)
    row = next(
        row
        for row in rows(load_all()[asked.calculator], answer["outputs"])
        if row["key"] == asked.shown
    )
    return str(escape(f"{row['value']}{NO_BREAK}{row['unit']}".strip()))


def calculator_link(asked: Call) -> str:
    """A link to the calculator with its inputs filled in."""
    filled_in = book_query(asked.inputs)
    return f"[{escape(asked.shown)}](../calculators/{asked.calculator}.md{filled_in})"

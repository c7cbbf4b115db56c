"""Links to the calculators that go on from an answer, filled in with what it gave."""

from collections.abc import Mapping, Sequence
from typing import Any

from calculators.core.address import write
from calculators.core.declare import Spec
from calculators.core.messages import LeadData
from calculators.core.numbers import show_plain
from calculators.core.paint.element import NOTHING, Html, element
from calculators.core.result import Note
from calculators.core.run import Computed

DIGITS = 6  # of a figure in an address
UNQUOTED = frozenset("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~")


class LeadLinks:
    """The leads of one answer as links, by the calculator to which they go."""

    def __init__(self, spec: Spec, computed: Computed, root: str, *, filled: bool = True) -> None:
        """``root`` leads from the page to the site's root; without ``filled`` no figure is handed on."""
        self.labels = {lead.calculator: lead.label for lead in spec.leads_to}
        self.leads: Sequence[LeadData] = computed.answer.get("leads", ()) if filled else ()
        self.root = root

    def at(self, note: Note) -> list[Html]:
        """The links that stand at a note; a lead that does not hold goes to the empty form."""
        inputs = {lead["calculator"]: lead["inputs"] for lead in self.leads}
        return [self.link(name, self.labels[name], inputs.get(name, {}), {}) for name in note.leads]

    def at_the_end(self, notes: Sequence[Note]) -> Html:
        """The links to all calculators to which no note leads already."""
        linked = {f"{link.page}" for note in notes for link in note.links}
        linked |= {page_of(name) for note in notes for name in note.leads}
        links = [
            self.link(lead["calculator"], lead["label"], lead["inputs"], {"class": "button"})
            for lead in self.leads
            if page_of(lead["calculator"]) not in linked
        ]
        attributes = {"class": "after", "id": "leads", "aria-label": "Go on with this"}
        return element("nav", attributes, *links) if links else NOTHING

    def link(
        self, calculator: str, label: str, inputs: dict[str, Any], attributes: dict[str, str]
    ) -> Html:
        """One link."""
        address = f"{self.root}{page_of(calculator)}{query(inputs)}"
        return element("a", {**attributes, "href": address}, label)


def page_of(calculator: str) -> str:
    """A calculator's page, below the site's root."""
    return f"calculators/{calculator}/"


def query(inputs: Mapping[str, Any]) -> str:
    """Inputs as the part of an address behind its page; none, nothing."""
    pairs = (f"{quoted(key)}={quoted(written(value))}" for key, value in inputs.items())
    return f"?{'&'.join(pairs)}" if inputs else ""


def written(value: Any) -> str:
    """One input as text for an address."""
    return write(rounded(value), DIGITS)


def quoted(text: str) -> str:
    """A text as an address may hold it. The library's own way would load much that no phone needs."""
    return "".join(
        chr(octet) if chr(octet) in UNQUOTED else f"%{octet:02X}" for octet in text.encode()
    )


def rounded(value: Any) -> Any:
    """A value with its figures cut to what an address carries, inside rows too."""
    if isinstance(value, float):
        return float(show_plain(value, DIGITS))
    if isinstance(value, dict):
        return {key: rounded(part) for key, part in value.items()}
    return [rounded(part) for part in value] if isinstance(value, list) else value

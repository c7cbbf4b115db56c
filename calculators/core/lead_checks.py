"""Whether what is declared as leading on does: its target exists, and so do the keys at both ends."""

from collections.abc import Iterable, Mapping, Sequence

from calculators.core.declare import Spec
from calculators.core.fields import InputField
from calculators.core.leads import Lead, OnlyBeside, Rows, Scaled, Source, Value
from calculators.core.result import Note


def check_leads(catalogue: Mapping[str, Spec]) -> None:
    """Check every lead of every calculator. Raises ``TypeError`` that names all wrong ones."""
    wrong = [
        f"{spec.name} leads to {lead.calculator}: {fault}"
        for spec in catalogue.values()
        for lead in spec.leads_to
        for fault in faults(lead, spec, catalogue)
    ]
    if wrong:
        raise TypeError("; ".join(wrong))


def faults(lead: Lead, spec: Spec, catalogue: Mapping[str, Spec]) -> list[str]:
    """What is wrong with one lead, in words."""
    if lead.calculator not in catalogue:
        return ["there is no such calculator"]
    here = {field.key for field in spec.inputs} | {field.key for field in spec.outputs}
    keys = [key.split(".")[0] for key in (*lead.needs, *keys_of(lead.takes.values()))]
    return [
        *(f"it has no input or output {key}" for key in keys if key not in here),
        *unknown_inputs(lead.takes, catalogue[lead.calculator].inputs),
    ]


def keys_of(sources: Iterable[Source]) -> list[str]:
    """The keys that some sources take, from the answer itself."""
    keys: list[str] = []
    for source in sources:
        if isinstance(source, Rows):
            keys += [source.each] if source.each else keys_of(source.columns.values())
        elif isinstance(source, OnlyBeside):
            keys += [source.needs, source.key]
        elif isinstance(source, Scaled):
            keys.append(source.key)
        elif not isinstance(source, Value):
            keys.append(source)
    return keys


def unknown_inputs(takes: Mapping[str, Source], fields: Sequence[InputField]) -> list[str]:
    """Keys that the target does not take, rows included, and constants that are none of its choices."""
    by_key = {field.key: field for field in fields}
    wrong = []
    for key, source in takes.items():
        field = by_key.get(key)
        if field is None:
            wrong.append(f"that has no input {key}")
        elif isinstance(source, Rows):
            wrong += unknown_inputs(source.columns, field.row)
        elif isinstance(source, Value) and field.choices:
            is_choice = as_choice(source.value) in field.choices
            wrong += [] if is_choice else [f"{source.value} is no choice of {key}"]
    return wrong


def as_choice(value: str | float | bool) -> str:
    """A constant as choices are written: yes and no as true and false."""
    return str(value).lower() if isinstance(value, bool) else str(value)


def check_notes(spec: Spec, notes: Iterable[Note]) -> None:
    """Check that notes lead only where the declaration does. Raises ``TypeError``."""
    declared = {lead.calculator for lead in spec.leads_to}
    for note in notes:
        if unknown := set(note.leads) - declared:
            raise TypeError(f"{spec.name}: a note leads to {', '.join(unknown)}, undeclared")

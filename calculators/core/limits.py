"""What an input takes, in words, for a message about one that will not do."""

from calculators.core.fields import InputField, Kind
from calculators.core.numbers import show_number
from calculators.core.shown_units import System, to_shown, unit_shown
from calculators.core.wording import first_of

MAX_ROWS = 1_000
MOST_KEYS_SAID = 40  # of choices: with all plants a message would be pages long
MOST_LINK_ROWS = (
    300  # of a list in an address, as in docs/assets/calculator.js: no keeper has made more
)


def allowed(field: InputField, system: System = "metric") -> str:
    """Say what a field takes, in the unit shown."""
    if field.kind in (Kind.CHOICE, Kind.FLAG):
        return f"allowed are {first_of(field.choices, MOST_KEYS_SAID)}"
    if field.kind == Kind.KEYS:
        return "allowed is a list of its keys, which --describe names"
    if field.kind == Kind.OBJECT:
        return f"allowed is an object with {', '.join(keys_of(field.row))}"
    if field.kind == Kind.TEXT:
        words = field.text_form.words if field.text_form else "a text of 1 to 80 characters"
        return f"allowed is {words}"
    if field.octets:
        return f"allowed is base64 of at most {field.octets.most} octets"
    if field.kind == Kind.LIST:
        return f"allowed is a list of at most {most_rows(field)} rows with {', '.join(keys_of(field.row))}"
    unit = f" {unit_shown(field, system)}".rstrip()
    integer_words = "a whole number, " if field.kind == Kind.INTEGER else ""
    return f"allowed is {integer_words}{span(field, system)}{unit}"


def most_rows(field: InputField) -> int:
    """How many rows a list may have."""
    return field.from_file.most if field.from_file else MAX_ROWS


def span(field: InputField, system: System) -> str:
    """The possible range in the unit shown, open where it has no end."""
    low, high = (
        None if end is None else show_number(to_shown(field, end, system), 6)
        for end in (field.low, field.high)
    )
    if high is None:
        return f"{low} or more"
    return f"up to {high}" if low is None else f"{low} to {high}"


def keys_of(fields: tuple[InputField, ...]) -> list[str]:
    """The keys of some fields, in order."""
    return [field.key for field in fields]

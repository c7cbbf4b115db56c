"""Days and tasks as an iCalendar file (RFC 5545), so that a phone's own calendar reminds the keeper."""

from collections.abc import Iterable
from datetime import date, timedelta
from typing import NamedTuple

from calculators.core.figures import figure
from calculators.science.growth.tasks import WholeMinutes

LINE_OCTETS = 75  # section 3.1: longer lines are folded, without the line break
END_OF_LINE = "\r\n"
PRODUCT = "-//Mulmbook//Upkeep//EN"
HOST = "mulmbook.invalid"  # a name that can belong to no one (RFC 2606)
FNV_START, FNV_PRIME = 14695981039346656037, 1099511628211  # of the 64-bit FNV-1a, by definition
ESCAPED = ("\\", ";", ",")  # section 3.3.11; the backslash first


class CalendarTask(NamedTuple):
    """One task on one day: what it is, where, and how many minutes it takes."""

    day: date
    where: str
    task: str
    minutes: float


def calendar_file(entries: Iterable[CalendarTask], made: date) -> str:
    """The whole file as text. ``made`` is the day on which the list was made.

    Each entry becomes an event of a whole day that does not mark the keeper as busy. The same entry
    always has the same identifier, so that reading a file twice changes nothing.
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{PRODUCT}", "CALSCALE:GREGORIAN"]
    seen: dict[str, int] = {}
    for entry in entries:
        name = identifier(entry)
        seen[name] = seen.get(name, 0) + 1
        if seen[name] > 1:
            name = f"{seen[name]}-{name}"
        lines += event(entry, name, made)
    lines.append("END:VCALENDAR")
    return "".join(fold(line) + END_OF_LINE for line in lines)


def event(entry: CalendarTask, name: str, made: date) -> list[str]:
    """The lines of one event, not yet folded."""
    return [
        "BEGIN:VEVENT",
        f"UID:{name}",
        f"DTSTAMP:{made:%Y%m%d}T000000Z",
        f"DTSTART;VALUE=DATE:{entry.day:%Y%m%d}",
        f"DTEND;VALUE=DATE:{entry.day + timedelta(days=1):%Y%m%d}",
        f"SUMMARY:{escape(f'{entry.where}: {entry.task}')}",
        f"DESCRIPTION:{escape(f'About {figure(WholeMinutes, entry.minutes)} minutes.')}",
        "TRANSP:TRANSPARENT",
        "END:VEVENT",
    ]


def identifier(entry: CalendarTask) -> str:
    """A name for the event that depends on its day, place and task alone."""
    return f"{entry.day:%Y%m%d}-{fnv(entry.where)}-{fnv(entry.task)}@{HOST}"


def fnv(text: str) -> str:
    """A short name for a text, always the same: its FNV-1a hash in 16 hexadecimal digits."""
    value = FNV_START
    for octet in text.encode():
        value = (value ^ octet) * FNV_PRIME % 2**64
    return f"{value:016x}"


def escape(text: str) -> str:
    """A text as section 3.3.11 wants it: line breaks as ``\\n``, other control characters as blanks."""
    return "\\n".join(escape_line(line) for line in text.splitlines())


def escape_line(line: str) -> str:
    """One line of a text, the signs with a meaning of their own escaped."""
    tidy = "".join(sign if sign >= " " and sign != "\x7f" else " " for sign in line)
    for sign in ESCAPED:
        tidy = tidy.replace(sign, f"\\{sign}")
    return tidy


def fold(line: str) -> str:
    """Break a line after at most 75 octets of UTF-8, never inside a character."""
    parts, room, part = [], LINE_OCTETS, ""
    for sign in line:
        size = len(sign.encode())
        if size > room:
            parts.append(part)
            part, room = "", LINE_OCTETS - 1  # the blank that marks a folded line counts
        part += sign
        room -= size
    return f"{END_OF_LINE} ".join([*parts, part])

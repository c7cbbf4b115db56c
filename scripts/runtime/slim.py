"""Makes bytecode small: without columns of lines, or the lines too, and without docstrings nobody reads.

Runs inside the browser's own Python, or in one of its version: bytecode is of one version alone.
"""

import dis
import io
import marshal
import zipfile
from collections.abc import Collection, Iterator, Mapping
from itertools import pairwise
from types import CodeType

FIXED_DATE = (2000, 1, 1, 0, 0, 0)  # same sources, same bytes
HEADER = 16  # octets of a pyc before its code
OF_A_FUNCTION = 0x1  # a flag of its code: names in it have fixed places
# An entry of a table of lines starts with its kind; how many units of code it covers, less one, is added.
WITH_LINE, WITHOUT_LINE = 0xE8, 0xF8
MOST_UNITS, UNIT = 8, 2  # of an entry; octets of a unit
SIX_BITS, MORE = 0x3F, 0x40  # of a number that is written six bits at a time


def slim_pyc(pyc: bytes, *, lines: bool, keep: Collection[str] = ()) -> bytes:
    """A pyc's octets made small, see ``slim``."""
    code = slim(marshal.loads(pyc[HEADER:]), lines=lines, keep=keep)
    return pyc[:HEADER] + marshal.dumps(code)


def slim(
    code: CodeType, *, lines: bool, keep: Collection[str] = (), documented: bool = False
) -> CodeType:
    """The same code; what it does is the same.

    A traceback then has no marks under a line; without ``lines`` it has the names of file and function alone.
    Docstrings go, save this code's own where it is ``documented``, and those of the functions in it that
    ``keep`` names.
    """
    consts = [
        slim(const, lines=lines, documented=const.co_name in keep)
        if isinstance(const, CodeType)
        else const
        for const in code.co_consts
    ]
    for index in () if documented else docstrings(code):
        consts[index] = None
    table = b"".join(line_table(code, lines=lines))
    return code.replace(co_consts=tuple(consts), co_linetable=table)


def docstrings(code: CodeType) -> Iterator[int]:
    """Where among its constants a docstring stands that nothing else in the code reads; places, each once.

    A function's is its first constant; that of a module or a class is a name that is stored.
    """
    steps = list(dis.get_instructions(code))
    read = [step.arg for step in steps if step.opcode in dis.hasconst]
    is_function = code.co_flags & OF_A_FUNCTION
    if is_function and code.co_consts and isinstance(code.co_consts[0], str) and 0 not in read:
        yield 0
    for step, following in pairwise(steps):
        is_text = step.opname == "LOAD_CONST" and isinstance(step.argval, str)
        is_docstring = (following.opname, following.argval) == ("STORE_NAME", "__doc__")
        if step.arg is not None and is_text and is_docstring and read.count(step.arg) == 1:
            yield step.arg


def line_table(code: CodeType, *, lines: bool) -> Iterator[bytes]:
    """The entries of a table that says each instruction's line alone, as CPython 3.11 and later read them.

    Without ``lines`` it says of each that it has none; a table with no entries breaks what prints an error.
    """
    line = code.co_firstlineno
    for start, end, at in code.co_lines() if lines else [(0, len(code.co_code), None)]:
        for first in range(start, end, MOST_UNITS * UNIT):
            units = min(MOST_UNITS, (end - first) // UNIT)
            if at is None:
                yield bytes([WITHOUT_LINE | units - 1])
            else:
                yield bytes([WITH_LINE | units - 1]) + signed(at - line)
                line = at


def signed(number: int) -> bytes:
    """A number with its sign in the lowest bit, six bits an octet, the lowest first."""
    rest = -number << 1 | 1 if number < 0 else number << 1
    octets = bytearray()
    while rest > SIX_BITS:
        octets.append(MORE | rest & SIX_BITS)
        rest >>= 6
    return bytes([*octets, rest])


def stored(files: Mapping[str, bytes]) -> bytes:
    """A zip of files as they are: it is packed as one stream, and Python has nothing to inflate."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as target:
        for name, data in files.items():
            entry = zipfile.ZipInfo(name, FIXED_DATE)
            entry.external_attr = 0o644 << 16
            target.writestr(entry, data)
    return made.getvalue()

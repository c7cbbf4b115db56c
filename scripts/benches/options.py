"""What a bench is told on the command line beside its name."""

from typing import NamedTuple


class Options(NamedTuple):
    """How often each figure is taken, and which rows: none named means all."""

    runs: int
    only: tuple[str, ...] = ()

    def has(self, row: str) -> bool:
        """Whether a row is to be measured."""
        return not self.only or row in self.only

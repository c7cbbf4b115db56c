"""Stands in for the runtime's loop of tasks: there are none, see ``asyncio``."""

from pyodide_js._api import scheduleCallback

# An image of memory counts what of JavaScript is held, by its place: the whole module holds this one.
HELD = scheduleCallback


def _initialize_event_loop() -> None:
    """Nothing to begin."""

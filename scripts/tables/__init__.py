"""The tables that ship with the calculators, written from the records: one module a table.

To add a table, write a module with ``table(library) -> dict`` and name it in ``registry.py``.
"""

"""Floating cover counted in a photograph."""

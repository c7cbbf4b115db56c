"""Floating plants: what the records say of them, when they are due for thinning, and how much."""

"""Checks of records that need more than one of them; loading calls none of these."""

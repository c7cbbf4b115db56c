"""Floating cover: its growth, its thinning, the light that it leaves."""

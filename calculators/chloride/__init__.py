"""Chloride against nitrite."""

"""Conditioner for new water, and what chloramine leaves behind."""

"""Rows of readings: the trend between water changes, and what follows from it."""

"""Soil and cap to buy, and what they hold."""

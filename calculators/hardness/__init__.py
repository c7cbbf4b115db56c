"""Hardness in other units, carbon dioxide, and mixing two waters."""

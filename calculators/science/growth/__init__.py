"""How stands of plants grow and are tended."""

"""How long carbonate hardness lasts."""

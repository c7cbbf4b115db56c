"""How to change water when ammonia shows."""

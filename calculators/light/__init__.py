"""How much light reaches the plants."""

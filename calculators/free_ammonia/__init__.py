"""How much of an ammonia reading is toxic."""

"""Light from the lamp to the plants."""

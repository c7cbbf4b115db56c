"""Feed, nitrogen and oxygen of the animals."""

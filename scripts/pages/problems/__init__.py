"""Pages of problems, and the ways to find one: questions, the key, the index of signs."""

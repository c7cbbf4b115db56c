"""Pictures of animals, to scale, from what their records say of their shape."""

"""Animals: their mass, feed, load and breath."""

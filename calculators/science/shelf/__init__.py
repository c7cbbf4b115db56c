"""The keeper's own tanks and their log: what they hold, how they stand, what is due."""

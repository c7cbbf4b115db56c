"""Minutes a week over several tanks, and when."""

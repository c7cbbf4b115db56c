"""Where the nitrogen of a week of feed goes."""

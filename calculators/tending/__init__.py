"""What a keeper does over the weeks: rounds, the calendar file, a bed that closes."""

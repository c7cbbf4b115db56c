"""What animals stand, eat and give off."""

"""From the bag to the tank."""

"""The layers on the floor of a tank."""

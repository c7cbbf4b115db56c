"""One round through all tanks of the shelf."""

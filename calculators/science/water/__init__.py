"""What happens in the water when waters mix and gas leaves."""

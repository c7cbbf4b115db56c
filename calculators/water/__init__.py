"""The chemistry of the water: ammonia, carbonate, hardness, oxygen."""

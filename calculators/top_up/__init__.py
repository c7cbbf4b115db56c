"""What evaporation and topping up do to hardness and nitrate."""

"""The tank as a thing of glass that stands on a floor."""

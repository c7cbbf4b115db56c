"""The change of water that brings a reading to a target."""

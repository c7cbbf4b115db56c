"""Minerals that give purified water its hardness."""

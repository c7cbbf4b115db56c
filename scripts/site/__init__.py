"""The built site: how it is built, served, watched and kept offline."""

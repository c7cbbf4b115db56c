"""Series as pictures in SVG, and their captions."""

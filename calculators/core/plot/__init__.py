"""Series as pictures in SVG, and their captions.

Places and lengths are units of the picture's own box, x from the left and y down; the values of a series
are in the unit that it names.
"""

"""Pictures of plants and animals, made at build time from the traits of their records.

Numbers are units of the picture: millimetres of the plant where it is drawn to scale, else those of
the picture's own box. Points are pairs of x and y, y upwards until the picture is written; angles are in
degrees.
"""

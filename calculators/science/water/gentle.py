"""How fast the water may change under animals."""

STEP_DH_A_DAY = 2  # °dH; common practice, no source: how fast animals may follow

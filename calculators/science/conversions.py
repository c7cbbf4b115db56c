"""How many of one unit are one of another, and shares of mass; no figure here was measured."""

CM2_PER_DM2 = 100.0
CM2_PER_M2 = 10_000.0
CM3_PER_L = 1_000.0
CM_PER_M = 100.0
DAYS_PER_WEEK = 7.0
GRAVITY_M_S2 = 9.80665  # standard gravity, exact by definition
KELVIN_AT_0_C = 273.15
MG_PER_G = 1_000.0
ML_PER_L = 1_000.0
MM_PER_CM = 10.0
MM_PER_DM = 100.0
PERCENT_TO_MG_PER_G = 10.0  # 1 % of a gram is 10 mg
UG_PER_MG = 1_000.0

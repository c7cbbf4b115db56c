"""What stands beside a line in a picture: one word for each line, whichever calculator draws it."""

from calculators.core.result import Line
from calculators.science.water.ammonia import ACT_NH3_MG_N_L, WATCH_NH3_MG_N_L

HARMS = "harms"
CAN_KILL = "can kill"
FREE_AMMONIA_LINES = (Line(HARMS, WATCH_NH3_MG_N_L), Line(CAN_KILL, ACT_NH3_MG_N_L))

"""What to do in the next hour when ammonia or nitrite harms: words, and where to go on."""

from calculators.core.result import Link, Note
from calculators.nitrogen.outlook import NITRITE_ACT_MG_N_L, NITRITE_WATCH_MG_N_L
from calculators.nitrogen.record import Record
from calculators.nitrogen.tank import Tank
from calculators.water.ammonia import chronic_limit_mg_n_l, rate, unionised_share

MOST_READ_MG_L = 50.0  # the most that the free-ammonia calculator takes
LARGEST_CHANGE_PERCENT = 50.0  # "a third to a half", as the words below say
NEXT_HOUR = (
    "take out leftovers and anything dead, stop feeding, "
    "add air, and change a third to a half of the water with dechlorinated water of the same "
    "temperature and pH. Leave the filter running and unwashed. Test again in the evening "
    "and each morning. No animals yet? Then "
    "keep them out until both tests read zero for a week."
)


def next_hour(record: Record, tank: Tank) -> Note:
    """What to do, at once where the readings given are harmful already."""
    when = "Now, within the hour" if harms_now(tank) else "When a test shows it, within the hour"
    return Note("danger", f"{when}: {NEXT_HOUR}", links=links(record, tank))


def harms_now(tank: Tank) -> bool:
    """Whether the readings that the forecast starts from call for action, by the same lines."""
    share = unionised_share(tank.ph, tank.temperature_c)
    ratio = tank.ammonia_mg_n_l / chronic_limit_mg_n_l(tank.ph, tank.temperature_c)
    acting = rate(ratio, tank.ammonia_mg_n_l * share) == "act"
    return acting or tank.nitrite_mg_n_l >= NITRITE_ACT_MG_N_L


def links(record: Record, tank: Tank) -> tuple[Link, ...]:
    """The page for the first hour, and calculators filled in with the peaks."""
    found = [
        Link("Animals in danger: what to do", "danger/"),
        Link(
            "How toxic this ammonia is",
            "calculators/free-ammonia/",
            {
                "ammonia_mg_l": min(record.ammonia.value, MOST_READ_MG_L),
                "reported_as": "nitrogen",
                "ph": tank.ph,
                "temperature_c": tank.temperature_c,
            },
        ),
    ]
    if record.nitrite.value > NITRITE_WATCH_MG_N_L:
        change: dict[str, float | str] = {
            "now_mg_l": record.nitrite.value,
            "tap_mg_l": 0.0,
            "target_mg_l": NITRITE_WATCH_MG_N_L,
            "max_change_percent": LARGEST_CHANGE_PERCENT,
            "volume_l": tank.volume_l,
        }
        found.append(
            Link("How large a change for this nitrite", "calculators/water-change/", change)
        )
    return tuple(found)

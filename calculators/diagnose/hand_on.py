"""The calculators that go on from a diagnosis, where the record of its cause names them.

Only the keeper's own figures are handed on. A record's example gives no more than what is dosed.
"""

from calculators.core.leads import Lead, Source, Value

AMMONIA: dict[str, Source] = {
    "ammonia_mg_l": "readings.ammonia_mg_n_l",
    "reported_as": Value("nitrogen"),
    "ph": "readings.ph",
    "temperature_c": "readings.temperature_c",
}
LEADS = (
    Lead(
        "ammonia-change",
        "How to change water with this ammonia",
        {
            **AMMONIA,
            "kh_dh": "readings.kh_dh",
            "gh_dh": "readings.gh_dh",
            "volume_l": "volume_l",
            **{key: key for key in ("tap_ph", "tap_kh_dh", "tap_gh_dh", "tap_ammonia_mg_n_l")},
        },
        needs=("readings.ammonia_mg_n_l",),
    ),
    Lead("free-ammonia", "How toxic this ammonia is", AMMONIA, needs=("readings.ammonia_mg_n_l",)),
    Lead(
        "dosing",
        "Work out the dose",
        {
            "volume_l": "volume_l",
            "nutrient": "calculators.dosing.inputs.nutrient",
            "source": "calculators.dosing.inputs.source",
        },
        needs=("calculators.dosing",),
    ),
    Lead(
        "floaters",
        "How much of the floaters to take off",
        {"cover_percent": "cover_percent"},
        needs=("calculators.floaters",),
    ),
    Lead(
        "nitrogen-balance",
        "Whether the feed brings what the plants take",
        {
            "volume_l": "volume_l",
            "feed_g_week": "feed_g_week",
            "nitrate_mg_l": "readings.nitrate_mg_l",
        },
        needs=("calculators.nitrogen-balance",),
    ),
    Lead(
        "light",
        "How much light reaches the plants",
        {"hours": "light_hours"},
        needs=("calculators.light",),
    ),
)

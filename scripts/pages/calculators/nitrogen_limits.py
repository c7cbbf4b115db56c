"""What the model leaves out and what surprises in it: prose for its page, beside the equations."""

LEFT_OUT = (
    "Other nutrients, carbon dioxide and light by the hour: they are taken to be enough in what the "
    "doubling time says. Where phosphate, potassium, iron or carbon run short, plants take less.",
    "Night and day, and the hour of feeding: all flows are daily means. A reading an hour after a meal "
    "can be higher than the curve.",
    "Temperature and plants: a doubling time is that of this tank. Temperature moves filter and rot only.",
    "Oxygen: the filter is taken to have enough. Where it has not, ammonia and nitrite stand higher.",
    "pH that follows hardness: it stays as entered, though nitrification uses up what buffers it.",
    "Ammonia lost to the air, nitrogen fixed from it, urea on its way to ammonia, algae, snails, "
    "leaves that animals eat.",
    "Animals that grow, breed or die: what they keep of their feed is a share, and never comes back.",
    "Roots: they take of what the soil sets free, before it reaches the water. What a rich soil holds "
    "besides is not counted, so rooted plants last longer there than the forecast says.",
    "Uptake in the dark, and by plants that hold no nitrogen in common: plants that grow nearly alike "
    "share one store.",
)

SURPRISES = (
    "More rooted plants never end with more nitrate. More floating plants can: a closed mat starves "
    "faster stems below it of light, and a mat that closes sooner sheds fronds that rot sooner. The "
    "nitrogen that stems would have taken stays in the water. Even a mat that is thinned each week, over "
    "slow stems, can end some tenths of a mg/L higher where it began twice as large: less than a kit shows.",
    "More feed never ends with less nitrate, but for the days after a dose or a change with water "
    "that holds nitrate: plants that were fed more are larger and take such a pulse up faster.",
    "More feed always makes the peaks of a new filter higher, and they last as long or longer, by two days "
    "at most the other way. With one half-saturation for all this did not hold: on very little feed the "
    "bacteria grew so slowly that nitrite below 0.5 mg N/L took up to five weeks longer to pass. That needs "
    "bacteria which live where they cannot grow. Those of poor water come in with the others and take "
    "their place, and with the lowest published half-saturations the day holds or comes sooner. It is "
    "no ground to wait less: no start of a filter on so little feed could be read.",
    "Plants are the exception: bacteria grow on what plants leave, and where that is little the day from "
    "which ammonia and nitrite stay low comes later with less feed: by up to three weeks in most tanks that "
    "were tried, by months at an edge of the band where plants leave next to nothing for long. "
    "More feed is no way out: its peaks are higher and harm more.",
    "Plants that starve live on their store for weeks after the water reads zero, and brown only then.",
    "Recovery is fast once nitrogen is there: uptake refills a store within days. Common practice, no "
    "source, says about four weeks from feeding more to healthy new growth. Most of that is the feed "
    "itself, raised by a quarter a week; the rest is the time in which new leaves become a third of "
    "the stand, from some days for duckweed to a month and more for slow rosettes. No rate "
    "was bent to give it.",
)

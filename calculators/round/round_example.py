"""The worked example: three invented tanks of the demo library, and a few readings."""

from calculators.science.shelf.entries import Entry
from calculators.science.shelf.shelf_tank import AnimalsHeld, ChangePlan, PlantHeld, ShelfTank

TODAY = "2026-11-28"
TANKS = [
    ShelfTank(id="reading-room", name="Reading Room", demo=True, net_l=120, ph=7.2, temperature_c=24,
              change=ChangePlan(25, 7),
              plants=[PlantHeld("hygrophila-polysperma", 100), PlantHeld("rotala-rotundifolia", 80)],
              animals=[AnimalsHeld("paracheirodon-innesi", 40)]),
    ShelfTank(id="foyer", name="Foyer", demo=True, net_l=240, ph=7.5, temperature_c=25,
              change=ChangePlan(20, 10), plants=[PlantHeld("vallisneria-spiralis", 250)]),
    ShelfTank(id="childrens-corner", name="Children's Corner", demo=True, net_l=54, ph=7.2,
              temperature_c=22, change=ChangePlan(15, 14),
              plants=[PlantHeld("taxiphyllum-barbieri", 60)],
              animals=[AnimalsHeld("neocaridina-davidi", 60)]),
]  # fmt: skip
LOG = [
    Entry("1", "reading-room", "2026-11-21T18:00:00Z", "change", None, 25),
    Entry("2", "reading-room", "2026-11-26T18:00:00Z", "reading", "nitrate_mg_l", 8),
    Entry("3", "reading-room", "2026-11-26T18:01:00Z", "reading", "ammonia_mg_n_l", 0),
    Entry("4", "reading-room", "2026-11-13T18:00:00Z", "trim", "hygrophila-polysperma", 70),
    Entry("5", "foyer", "2026-11-16T18:00:00Z", "change", None, 20),
    Entry("6", "foyer", "2026-11-25T18:00:00Z", "reading", "nitrate_mg_l", 48),
    Entry("7", "childrens-corner", "2026-11-10T18:00:00Z", "change", None, 15),
]

"""The core path of a visit, as steps that any engine can take; each asserts what its reader would see."""

from collections.abc import Callable
from time import monotonic

from tests.engines.drivers import PATIENCE, Engine

# Waits in the page itself: no driver's own way of waiting is asked.
UNTIL = """const until = async (holds, what) => {
  const end = performance.now() + 150_000;
  while (!(await holds())) {
    const words = document.body.innerText.slice(0, 3_000);
    if (performance.now() > end) throw new Error(`waited in vain until ${what}; the page says: ${words}`);
    await new Promise((done) => setTimeout(done, 100));
  }
};
const find = (selector) => document.querySelector(selector);
const type = (field, text) => {
  field.value = text;
  field.dispatchEvent(new Event("input", { bubbles: true }));
  field.dispatchEvent(new Event("change", { bubbles: true }));
};
"""


class Visit:
    """A reader with one engine before one copy of the book; ``unplug`` takes the network away."""

    def __init__(self, engine: Engine, address: str, unplug: Callable[[], None]) -> None:
        self.engine, self.address, self.unplug = engine, address, unplug

    def open(self, path: str) -> None:
        self.engine.open(self.address + path)

    def see(self, body: str, *given: object):
        return self.engine.run(UNTIL + body, *given)

    def arrive(self, path: str) -> None:
        """Wait until the page's address ends so; while it changes, a driver has no page to ask."""
        end = monotonic() + PATIENCE
        while True:
            try:
                if self.engine.run("return location.pathname;").endswith(path):
                    return
            except Exception:  # each driver has errors of its own for a page that goes
                if monotonic() > end:
                    raise
            assert monotonic() < end, f"never came to {path}"


def home(visit: Visit) -> None:
    visit.open("")
    assert visit.see("return document.title;") == "Mulmbook"
    doors = visit.see("return document.querySelectorAll('.doors a').length;")
    assert doors >= 4


def plant(visit: Visit) -> None:
    visit.open("plants/lemna-minor/")
    name, drawings = visit.see(
        "return [find('h1').textContent, document.querySelectorAll('main figure svg').length];"
    )
    assert "Lemna minor" in name
    assert drawings >= 1


def search_with_a_slip(visit: Visit) -> None:
    visit.open("search/")
    first = visit.see(
        """await until(() => find("#query"), "the search field stands there");
        type(find("#query"), given[0]);
        await until(() => find("#found li b")?.innerText === given[1], "the right page is first");
        return find("#found li b").innerText;""",
        *("limnofila sessiliflora", "Limnophila sessiliflora"),
    )
    assert first == "Limnophila sessiliflora"


def live_answer(visit: Visit) -> None:
    """Emerson and others (1975), table: 5.38 % is un-ionised at 25 °C and pH 8.0."""
    visit.open("calculators/free-ammonia/?ammonia_mg_l=1&temperature_c=25&ph=7")
    answer = visit.see(
        """await until(() => find("#calculator[data-answered]"), "Python has answered");
        const before = find("#calculator").dataset.answered;
        type(find("#calculator [data-key=ph] input, #calculator input[data-key=ph]"), "8");
        await until(() => find("#calculator").dataset.answered !== before, "Python has answered anew");
        await until(() => find("#answer").textContent.includes("5.38"), "the published share stands there");
        return find("#answer").textContent;"""
    )
    assert "5.38" in answer


def forecast(visit: Visit) -> None:
    visit.open("calculators/nitrogen-forecast/")
    pictures = visit.see(
        """await until(() => find("#calculator[data-answered]"), "Python has answered");
        find("#example").click();
        await until(() => find("#borrowed") && find("#answer figure svg"), "the course is drawn");
        return document.querySelectorAll("#answer figure svg").length;"""
    )
    assert pictures >= 1


def diagnosis(visit: Visit) -> None:
    visit.open("problems/")
    cause = visit.see(
        """await until(() => find("#diagnosis-more")?.getClientRects().length, "the drawing can be tapped");
        const tap = new MouseEvent("click", { bubbles: true, cancelable: true });
        find('a.place[data-place="old-leaves"]').dispatchEvent(tap);
        const sign = '#diagnosis-chips button[data-present="old-leaves-pinholes"]';
        await until(() => find(sign) && !find(sign).disabled, "the signs of old leaves stand there");
        find(sign).click();
        await until(() => find("#diagnosis-causes details"), "causes are ranked");
        return find("#diagnosis-causes details").dataset.problem;"""
    )
    assert cause == "potassium-starvation"


def tank_kept_and_read_back(visit: Visit) -> None:
    visit.open("shelf/new/")
    visit.see(
        """await until(() => find("#minute-size button"), "the form stands there");
        type(find("#tank-name"), "Window sill");
        const buttons = [...document.querySelectorAll("#new-tank button")];
        const keep = buttons.find((one) => one.textContent.includes("Put it on the shelf"));
        setTimeout(() => keep.click(), 200);"""  # it is gone with the page
    )
    visit.arrive("/shelf/")
    visit.open("shelf/")  # loaded anew: what is seen comes from the device
    cards = visit.see(
        """await until(() => find(".tank-card"), "the tank is still on the shelf");
        return [...document.querySelectorAll(".tank-card h2")].map((one) => one.innerText.trim());"""
    )
    assert cards == ["Window sill"]


def offline(visit: Visit) -> None:
    visit.open("about/")
    visit.see(
        """const { serviceWorker } = navigator;
        const stored = "The whole book is on this device";
        await until(() => find("main").textContent.includes(stored), "the book is stored");
        await until(() => serviceWorker.controller, "the copy serves this page");"""
    )
    visit.unplug()
    plant(visit)
    live_answer(visit)
    visit.open("shelf/")
    assert "Window sill" in visit.see(
        """await until(() => find(".tank-card"), "the tank is still there");
        return find(".tank-card").innerText;"""
    )


STEPS = (
    home,
    plant,
    search_with_a_slip,
    live_answer,
    forecast,
    diagnosis,
    tank_kept_and_read_back,
    offline,
)

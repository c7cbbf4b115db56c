// Values of a picture under a finger, the pointer or the arrow keys. Python wrote each place and its words.

const READ = "read"; // the class of a picture whose line shows

/** For all pictures that come, however often it is called: the same listener is added once. */
export function openPictures() {
  document.addEventListener("input", slide);
  for (const kind of ["pointerdown", "pointermove"]) document.addEventListener(kind, point);
}

function slide({ target }) {
  if (target.matches(".along input")) show(target);
}

/** The place nearest to where the finger or the pointer is. */
function point(event) {
  const svg = /** @type {SVGSVGElement} */ (event.target.closest?.(".plot > svg"));
  if (!svg) return;
  /** @type {HTMLInputElement} */
  const slider = svg.parentElement.querySelector(".along input");
  const box = svg.getBoundingClientRect();
  const x = ((event.clientX - box.left) / box.width) * svg.viewBox.baseVal.width;
  const away = places(slider).map(([at]) => Math.abs(at - x));
  slider.value = String(away.indexOf(Math.min(...away)));
  show(slider);
}

const placesRead = new WeakMap(); // by slider: a finger that moves asks for them many times a second

function places(slider) {
  if (!placesRead.has(slider)) placesRead.set(slider, JSON.parse(slider.dataset.places));
  return placesRead.get(slider);
}

/** The place that the slider stands at: its words, and a line in the picture. */
function show(slider) {
  const figure = slider.closest(".plot");
  const [x, words] = places(slider)[Number(slider.value)];
  figure.classList.add(READ);
  figure.querySelector(".values").textContent = words;
  slider.setAttribute("aria-valuetext", words);
  const line = figure.querySelector(".cursor");
  for (const end of ["x1", "x2"]) line.setAttribute(end, x);
}

// The keyboard of a wide screen: "/" leads to search, arrows go through a list of links.

const LISTS = ".cards, .doors, .board, .candidates, .picks, .lines, .plants tbody, .jump";
const STEPS = { ArrowDown: 1, ArrowUp: -1 };
const TYPED_INTO = "input, select, textarea, [contenteditable]";

export function openKeys(root) {
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return;
    const here = /** @type {HTMLElement} */ (event.target);
    if (event.key === "/" && !here.matches(TYPED_INTO) && !document.querySelector("dialog[open]")) find(event, root);
    if (event.key in STEPS) go(event, here, STEPS[event.key]);
  });
}

/** To the page's own search field, or to the page of search. */
function find(event, root) {
  event.preventDefault(); // the key itself is not typed
  /** @type {HTMLInputElement} */
  const field = document.querySelector("#query");
  if (field) field.focus();
  else location.href = new URL("search/", root).href;
}

/** From a link of a list to its neighbour; from the search field into what it found, and back. */
function go(event, here, step) {
  const list = here.matches("#query") ? document.querySelector("#found") : here.matches("a") && here.closest(LISTS);
  if (!list) return;
  /** @type {HTMLElement[]} */
  const links = [...list.querySelectorAll("a")].filter((link) => link.checkVisibility());
  const next = links[links.indexOf(here) + step] ?? (step < 0 && list.id === "found" ? document.querySelector("#query") : null);
  if (!next) return;
  event.preventDefault();
  next.focus();
}

// On paper nothing stays folded: what a page folds is opened before it is printed, and closed after.

const OPENED = "data-for-print";

export function openForPrint(place) {
  for (const one of place.querySelectorAll("details:not([open])")) {
    one.setAttribute("open", "");
    one.setAttribute(OPENED, "");
  }
}

export function closeAfterPrint(place) {
  for (const one of place.querySelectorAll(`details[${OPENED}]`)) {
    one.removeAttribute("open");
    one.removeAttribute(OPENED);
  }
}

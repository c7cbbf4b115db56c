// Where the keeper stands in a page that is painted anew: the control that takes a control's place takes its focus too.

/** Paint, and give the focus that was within a box to the control of the same name there, where there is one. */
export function keepingFocus(box, paint) {
  const held = box.contains(document.activeElement) ? document.activeElement : null;
  paint();
  if (held && !held.isConnected) twinOf(held, box)?.focus();
}

/**
 * The control in a box that says of itself what another did, be that in the page or not any more.
 * @returns {HTMLElement | undefined}
 */
export function twinOf(one, box = document.body) {
  return [...box.querySelectorAll(one.localName)].find((other) => nameOf(other) === nameOf(one));
}

function nameOf(one) {
  return one.dataset.key ?? (one.id || one.getAttribute("aria-label") || one.textContent);
}

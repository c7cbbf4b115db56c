// A link with some figures that leads to a calculator for the tank here: the tank may fill what the link leaves blank.
// Any other address that brings figures is somebody's own calculation, and no tank is mixed into it.

const LEAD = "mulmbook-lead";

export function rememberLead(href) {
  try {
    sessionStorage.setItem(LEAD, href);
  } catch {
    // storage is off: the next form stays as its address has it
  }
}

/** Whether this address was reached by such a link; asked once. */
export function isLedHere() {
  try {
    const led = sessionStorage.getItem(LEAD) === location.href;
    sessionStorage.removeItem(LEAD);
    return led;
  } catch {
    return false;
  }
}

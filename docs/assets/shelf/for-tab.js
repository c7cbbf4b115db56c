// What a tab keeps until it is closed: through the way back, a reload, and a browser that put the tab to sleep.

/** What was kept under a name, as it was; null where nothing was, or where it cannot be read. */
export function forTab(name) {
  try {
    return JSON.parse(sessionStorage.getItem(name));
  } catch {
    return null; // storage is off, or another version of the book wrote it otherwise
  }
}

/** Keep plain data under a name; null takes it away. */
export function keepForTab(name, value) {
  try {
    if (value === null) sessionStorage.removeItem(name);
    else sessionStorage.setItem(name, JSON.stringify(value));
  } catch {
    // storage is off: it lasts as long as the page
  }
}

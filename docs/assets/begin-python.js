// On a page that names this script in its head, Python starts while the page is still read: of a book that is kept on
// this device, and on a quick line. On a slow one it waits for the page, whose own files come first.

import { isLineQuick } from "./quick-line.js";
import { start } from "./runtime.js";

const isNamed = document.querySelector('head script[src$="begin-python.js"]');
if (isNamed) begin();

async function begin() {
  if (!navigator.serviceWorker?.controller && !(await isLineQuick())) return;
  start().catch(() => {}); // the page says so, and offers another try
}

// On a page that names this script in its head, of a book that is kept on this device: Python starts while the page is
// still read. On a first visit it waits for the page, whose own files come first on a slow line.

import { start } from "./runtime.js";

const isNamed = document.querySelector('head script[src$="begin-python.js"]');
if (isNamed && navigator.serviceWorker?.controller) start().catch(() => {}); // the page says so, and offers another try

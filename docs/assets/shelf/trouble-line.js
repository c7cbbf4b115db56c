// Says at the head of a page of the shelf what could not be stored or read on this device, for as long as it is so.

import { element } from "../paint.js";

/** Keep the line of a page's box true. */
export function showTroubles(store, box) {
  const line = element("div", { className: "banner shelf-troubles", hidden: true });
  line.setAttribute("role", "alert");
  box.before(line);
  const paint = () => {
    const sentences = store.troubles();
    if (sentences.join("") === line.textContent) return; // said once, not at each change
    line.hidden = !sentences.length;
    line.replaceChildren(...sentences.map((text) => element("p", { textContent: text })));
  };
  const stop = store.onChange(() => (line.isConnected ? paint() : stop()));
  paint();
}

// A tank to another phone: the record travels in the link's own fragment, and as a code to photograph.

import { element } from "../paint.js";
import { tankCode } from "./qr.js";
import { tankLink } from "./link.js";
import { shareLink } from "./share.js";

const WORDS = { shared: "", cancelled: "", copied: "The link is on the clipboard." };

export function openHandOn(here, tank) {
  const said = here.find("#tank-link-said");
  here.find("#tank-code").replaceChildren();
  said.textContent = "";
  here.find("#tank-link").onclick = async () => {
    const address = new URL("shelf/", here.root).href;
    try {
      const [url, code] = await Promise.all([tankLink(tank, address), tankCode(tank, address)]);
      paintCode(here, code);
      said.textContent = WORDS[await shareLink(tank.name, url)] ?? `Copy this link: ${url}`;
    } catch (wrong) {
      if (!wrong.reason) throw wrong;
      said.textContent = wrong.message;
    }
  };
}

function paintCode(here, { svg, leftOut }) {
  const box = element("div", { className: "code", innerHTML: svg }); // drawn by qr.js, the name in it escaped
  const words = leftOut.length ? `The code has no room for: ${leftOut.join(", ")}. The link carries all.` : "The code carries the whole tank, without its log.";
  here.find("#tank-code").replaceChildren(box, element("p", { className: "hint", textContent: words }));
}

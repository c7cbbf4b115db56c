// A tank to another phone: the record travels in the link's own fragment, and as a code to photograph.

import { element } from "../paint.js";
import { tankCode } from "./qr.js";
import { tankLink } from "./link.js";

export function openHandOn(here, tank) {
  const said = here.find("#tank-link-said");
  here.find("#tank-code").replaceChildren();
  said.textContent = "";
  here.find("#tank-link").onclick = async () => {
    const address = new URL("shelf/", here.root).href;
    try {
      const [url, code] = await Promise.all([tankLink(tank, address), tankCode(tank, address)]);
      paintCode(here, code);
      said.textContent = await sent(tank, url);
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

async function sent(tank, url) {
  try {
    if (navigator.share) await navigator.share({ title: tank.name, url });
    else await navigator.clipboard.writeText(url);
    return navigator.share ? "" : "The link is on the clipboard.";
  } catch (refusal) {
    return refusal.name === "AbortError" ? "" : `Copy this link: ${url}`;
  }
}

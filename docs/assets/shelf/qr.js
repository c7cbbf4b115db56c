// A tank's link as a QR code (ISO/IEC 18004), drawn as one path.

import { encode } from "uqr";
import { tankLink } from "./link.js";
import { ShelfError } from "./shelf-error.js";

const MOST_VERSION = 25; // larger ones are too fine for a phone held over a wet tank
const QUIET = 4; // modules around it, as the standard asks
const ALWAYS = ["id", "name"];

/**
 * A tank's QR code. Where the whole record is too much, its longest parts are left out, one after another, and named.
 * @param {{id: string, name: string}} tank
 * @param {string} address the page that reads the link
 * @returns {Promise<{svg: string, link: string, version: number, leftOut: string[]}>}
 */
export async function tankCode(tank, address) {
  let parts = Object.entries(tank).filter(([, value]) => value !== null && value !== undefined);
  const leftOut = [];
  for (;;) {
    const link = await tankLink(/** @type {any} */ (Object.fromEntries(parts)), address);
    const code = encoded(link);
    if (code) return { svg: svgOf(code, tank.name), link, version: code.version, leftOut };
    const longest = lengthiest(parts);
    if (!longest) throw new ShelfError("broken", "This tank's name is too long for a QR code. Send the link instead.");
    leftOut.push(longest);
    parts = parts.filter(([key]) => key !== longest);
  }
}

/** The code, with as much error correction as its size allows; null where the text is too long. */
function encoded(text) {
  for (const ecc of /** @type {const} */ (["M", "L"])) {
    try {
      return encode(text, { ecc, boostEcc: true, maxVersion: MOST_VERSION, border: 0 });
    } catch {
      // too long at this level
    }
  }
  return null;
}

function lengthiest(parts) {
  const sizes = parts.filter(([key]) => !ALWAYS.includes(key)).map(([key, value]) => [key, JSON.stringify(value).length]);
  return sizes.sort((one, other) => other[1] - one[1])[0]?.[0];
}

function svgOf({ data, size }, name) {
  const side = size + 2 * QUIET;
  const path = data.map((row, y) => runs(row).map(([x, length]) => `M${x + QUIET} ${y + QUIET}h${length}v1h-${length}z`).join("")).join("");
  const label = `QR code of ${name}`.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${side} ${side}" role="img" aria-label="${label}" shape-rendering="crispEdges"><path fill="#fff" d="M0 0h${side}v${side}H0z"/><path fill="#000" d="${path}"/></svg>`;
}

/** Where dark modules stand in a row: `[first, how many]`. */
function runs(row) {
  const found = [];
  row.forEach((dark, x) => {
    if (!dark) return;
    if (row[x - 1]) found.at(-1)[1] += 1;
    else found.push([x, 1]);
  });
  return found;
}

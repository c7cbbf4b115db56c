// A tank as a link: its record travels in the fragment, compressed, and no server sees it.

import { fileWith, guarded } from "./file-guard.js";
import { ShelfError } from "./shelf-error.js";

const SIGN = "#tank=";
const LONGEST = 100_000; // letters of a fragment that are looked at
const LARGEST = 200_000; // octets of a record, unpacked
const PACKED = "d";
const PLAIN = "j";

/** The link to `address` that carries a tank. */
export async function tankLink(tank, address) {
  const url = new URL(address);
  url.hash = SIGN + (await packed(JSON.stringify(tank)));
  return url.href;
}

/** Whether a fragment carries a tank. */
export function hasTank(fragment) {
  return fragment.startsWith(SIGN);
}

/**
 * The file object with the one tank of a fragment, ready for `compare` and `merge`. Throws `ShelfError`.
 * @param {string} fragment as `location.hash` has it
 */
export async function readTankLink(fragment) {
  const code = fragment.slice(SIGN.length);
  if (!hasTank(fragment) || !code || code.length > LONGEST) throw new ShelfError("broken", "This link carries no tank of ours.");
  let tank;
  try {
    tank = JSON.parse(await unpacked(code));
  } catch (refusal) {
    throw refusal instanceof ShelfError ? refusal : new ShelfError("broken", "This link was cut off or changed on its way. Ask for it again.");
  }
  return guarded(fileWith({ tanks: [tank] }));
}

async function packed(text) {
  const octets = new TextEncoder().encode(text);
  if (typeof CompressionStream !== "function") return PLAIN + toLetters(octets);
  return PACKED + toLetters(await drained(new Blob([octets]).stream().pipeThrough(new CompressionStream("deflate-raw"))));
}

async function unpacked(code) {
  const octets = fromLetters(code.slice(1));
  if (code[0] === PLAIN) return new TextDecoder("utf-8", { fatal: true }).decode(octets);
  if (code[0] !== PACKED) throw new ShelfError("newer", "This link was made by a newer version of the book. Take the new version, then open it again.");
  if (typeof DecompressionStream !== "function") throw new ShelfError("closed", "This browser is too old to open this link. Send the tank as a file instead.");
  const stream = new Blob([octets]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
  return new TextDecoder("utf-8", { fatal: true }).decode(await drained(stream));
}

/** All octets of a stream, but never more than a record may have. */
async function drained(stream) {
  const parts = [];
  let size = 0;
  const reader = stream.getReader();
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    size += next.value.length;
    if (size > LARGEST) {
      await reader.cancel().catch(() => {});
      throw new ShelfError("broken", `This link unpacks to more than ${LARGEST / 1000} kB. It is not opened.`);
    }
    parts.push(next.value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

// base64url, RFC 4648 section 5, without padding
function toLetters(octets) {
  const text = Array.from(octets, (octet) => String.fromCharCode(octet)).join("");
  return btoa(text).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

function fromLetters(letters) {
  return Uint8Array.from(atob(letters.replaceAll("-", "+").replaceAll("_", "/")), (letter) => letter.charCodeAt(0));
}

// A short name for a text, the same each time. No secret is kept by it.

/** FNV-1a in 64 bits of the text's UTF-8, as 16 hexadecimal digits. */
export function digest(text) {
  let hash = 0xcbf29ce484222325n;
  for (const octet of new TextEncoder().encode(text)) hash = BigInt.asUintN(64, (hash ^ BigInt(octet)) * 0x100000001b3n);
  return hash.toString(16).padStart(16, "0");
}

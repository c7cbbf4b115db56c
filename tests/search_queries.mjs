// Answers queries with the site's own search, outside a browser. Each line of the standard input is a list of queries
// as JSON, each line of the output what was found for them: of each query the addresses, best first. The folder beside
// it holds the site's assets.

import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";

globalThis.fetch = async (address) => ({ json: async () => JSON.parse(readFileSync(address, "utf-8")) });
const { openIndex, search } = await import("./assets/finder.js");
await openIndex(new URL("./", import.meta.url));
for await (const line of createInterface({ input: process.stdin })) {
  const found = JSON.parse(line).map((query) => search(query).map(({ address }) => address));
  process.stdout.write(`${JSON.stringify(found)}\n`);
}

// Answers queries with the site's own search, outside a browser. Standard input: a list of queries as JSON.
// Standard output: for each, the addresses found, best first. The folder beside it holds the site's assets.

import { readFileSync } from "node:fs";

globalThis.fetch = async (address) => ({ json: async () => JSON.parse(readFileSync(address, "utf-8")) });
const { openIndex, search } = await import("./assets/finder.js");
await openIndex(new URL("./", import.meta.url));
const queries = JSON.parse(readFileSync(0, "utf-8"));
process.stdout.write(JSON.stringify(queries.map((query) => search(query).map(({ address }) => address))));

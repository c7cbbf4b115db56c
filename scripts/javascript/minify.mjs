// Under Node: take comments, blanks and long local names out of modules, in place. Usage:
// node minify.mjs TERSER FILE…, where TERSER is the package's folder.

import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [terser, ...files] = process.argv.slice(2);
const { minify } = await import(pathToFileURL(`${terser}/main.js`));
for (const file of files) {
  const { code } = await minify(readFileSync(file, "utf8"), { module: true, compress: { passes: 1 }, mangle: true });
  writeFileSync(file, `${code}\n`);
}

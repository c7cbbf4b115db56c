// Under Node: join our modules and other people's into few files, without comments, blanks and long names. Usage:
// node bundle.mjs NODE_MODULES SOURCES TARGET. Beside the files, graph.json says which file holds a module or a
// package, and which files each one loads with it.

import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join, posix, relative, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { BEGIN, DOORS, LIBRARIES, PACKS, PAGE, PLAIN, WORKERS } from "./packs.mjs";

const [packages, sources, target] = process.argv.slice(2).map((path) => resolve(path));
const { rollup } = await import(pathToFileURL(join(packages, "@rollup/wasm-node/dist/es/rollup.js")));
const { minify } = await import(pathToFileURL(join(packages, "terser/main.js")));

/** A module's name as the packs have it; null for another's. */
const nameOf = (id) => (id.startsWith(sources + sep) ? relative(sources, id).split(sep).join("/") : null);

/** Where our modules import another package by its name. */
const libraries = {
  name: "libraries",
  resolveId: (name) => (name in LIBRARIES ? join(packages, name, LIBRARIES[name]) : null),
};

/** Each door is a file of its own that hands on what the module, in whatever file it is, gives out. */
const DOOR = "\0door:";
const doors = {
  name: "doors",
  resolveId: (name) => (name.startsWith(DOOR) ? name : null),
  load: (id) => (id.startsWith(DOOR) ? `export * from ${JSON.stringify(join(sources, id.slice(DOOR.length)))};` : null),
};

/** A module goes on meaning its own place by `import.meta.url`, whatever file it is in. */
const places = {
  name: "places",
  resolveImportMeta(property, { chunkId, moduleId }) {
    if (property !== "url") return null;
    const way = posix.relative(posix.dirname(chunkId), nameOf(moduleId));
    return `new URL(${JSON.stringify(way)}, import.meta.url).href`;
  },
};

/** The licence of another's package stands at the top of the file that holds it. */
const small = {
  name: "small",
  async renderChunk(code, chunk) {
    const made = await minify(code, { module: true, compress: { passes: 1 }, mangle: true });
    return { code: `${held(chunk).map(licence).join("")}${made.code}\n`, map: null };
  },
};

/** The other people's packages that a file holds. */
function held(chunk) {
  return Object.keys(LIBRARIES).filter((name) => Object.keys(chunk.modules).some((id) => id.startsWith(join(packages, name) + sep)));
}

function licence(name) {
  const folder = join(packages, name);
  const file = readdirSync(folder).find((one) => one.startsWith("LICENSE"));
  return `/* ${name}\n${readFileSync(join(folder, file), "utf8").trim()}\n*/\n`;
}

/**
 * Puts each module of ours and of the libraries into the first pack that reaches it. What a worker and the pages share
 * stands apart: a worker has no page, and must not load what begins one.
 */
function manualChunks(id, { getModuleInfo }) {
  const isIn = (pack, starts) => reached(pack, starts, getModuleInfo).has(id);
  const isOfWorkers = isIn("workers", WORKERS);
  if (isIn("begin", [BEGIN])) return isOfWorkers ? "everywhere" : BEGIN.slice(0, -".js".length);
  if (isIn("page", [PAGE])) return isOfWorkers ? "everywhere" : "page";
  const [pack] = Object.entries(PACKS).find(([name, starts]) => isIn(name, starts)) ?? [null];
  return pack;
}

const known = new Map();
function reached(pack, starts, getModuleInfo) {
  if (!known.has(pack)) known.set(pack, closure(starts, getModuleInfo));
  return known.get(pack);
}

/** All that some modules import, directly or not, and they themselves. */
function closure(names, getModuleInfo) {
  const found = new Set();
  const follow = (id) => {
    const info = getModuleInfo(id);
    if (found.has(id) || !info || info.isExternal) return;
    found.add(id);
    info.importedIds.forEach(follow);
  };
  for (const name of names) follow(join(sources, name));
  return found;
}

const input = Object.fromEntries([
  ...[PAGE, BEGIN, ...WORKERS].map((name) => [name.slice(0, -".js".length), join(sources, name)]),
  ...DOORS.map((name) => [name.slice(0, -".js".length), `${DOOR}${name}`]),
]);
const bundle = await rollup({
  input,
  plugins: [libraries, doors, places],
  external: (id) => id.endsWith("/runtime/pyodide.mjs"),
  preserveEntrySignatures: "allow-extension",
  onwarn: ({ message }) => { throw new Error(message); }, // a circle of imports among them
});
const { output } = await bundle.write({
  dir: target,
  format: "es",
  hoistTransitiveImports: false, // a page names all files that it loads
  experimentalMinChunkSize: 0, // or doors, which hold nothing themselves, are joined to one another
  manualChunks,
  entryFileNames: "[name].js",
  chunkFileNames: ({ name, facadeModuleId }) => {
    if (name in PACKS || name === "everywhere") return `${name}.js`;
    return facadeModuleId ? nameOf(facadeModuleId) : "shared/[name].js"; // what some parts share, and no pack holds
  },
  plugins: [small],
});
for (const name of PLAIN) {
  const { code } = await minify(readFileSync(join(sources, name), "utf8"), { compress: { passes: 1 }, mangle: true });
  mkdirSync(dirname(join(target, name)), { recursive: true });
  writeFileSync(join(target, name), `${code}\n`);
}
const files = Object.fromEntries(output.map(({ fileName, imports }) => [fileName, imports.filter((one) => !one.startsWith("."))]));
const modules = Object.fromEntries(output.flatMap(({ fileName, modules: held }) => Object.keys(held).filter(nameOf).map((id) => [nameOf(id), fileName])));
const others = Object.fromEntries(output.flatMap((chunk) => held(chunk).map((name) => [name, chunk.fileName])));
writeFileSync(join(target, "graph.json"), `${JSON.stringify({ files, modules, packages: others })}\n`);

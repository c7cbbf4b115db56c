// Under Node: the interpreter without what only native packages would call, which a book never loads. Usage:
// node shrink.mjs BINARYEN PYODIDE TARGET: the packages' folders, and the one to write the interpreter's two files to.
// What the interpreter hands out by name keeps its code alive, and that is all of Python's own interface in C. Here it
// hands out what the runtime's script names; what nothing calls then falls out.

import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";

const [binaryen, pyodide, target] = process.argv.slice(2);
const HEAD = 8; // octets of a module before its sections
const EXPORTS = 7; // the kind of section that holds what is handed out
const DECLARED = /var (_[\w$]+)=Module\["\1"\]=(?:\([^;]*?\)=>\(\1=Module\["\1"\]=)?wasmExports\["([\w$]+)"\][^;]*;/g;
const FEATURES = ["bulk-memory", "exception-handling", "multivalue", "mutable-globals", "nontrapping-float-to-int", "reference-types", "sign-ext"];

const script = readFileSync(`${pyodide}/pyodide.asm.js`, "utf8");
const named = new Set(script.replace(DECLARED, "").match(/[A-Za-z_$][\w$]*/g));
const isNamed = (name) => named.has(name) || named.has(`_${name}`);
const small = script.replace(DECLARED, (whole, _own, name) => (isNamed(name) ? whole : ""));
if (small.length === script.length) throw new Error("the runtime's script declares what it calls in another way now");
writeFileSync(`${target}/pyodide.asm.js`, small);

const file = `${target}/pyodide.asm.wasm`;
writeFileSync(file, withExports(readFileSync(`${pyodide}/pyodide.asm.wasm`), isNamed));
const options = [...FEATURES.map((name) => `--enable-${name}`), "--remove-unused-module-elements", "-o", file];
const done = spawnSync(process.execPath, [`${binaryen}/bin/wasm-opt`, file, ...options], { encoding: "utf8" });
if (done.status !== 0) throw new Error(`wasm-opt failed: ${done.stderr}`);

/** A module's octets with those of its exports alone whose names are to stay. */
function withExports(octets, stays) {
  const pieces = [octets.subarray(0, HEAD)];
  for (let at = HEAD; at < octets.length; ) {
    const [length, start] = number(octets, at + 1);
    const body = octets.subarray(start, start + length);
    const kept = octets[at] === EXPORTS ? exportsKept(body, stays) : body;
    pieces.push(Buffer.of(octets[at]), written(kept.length), kept);
    at = start + length;
  }
  return Buffer.concat(pieces);
}

/** The body of the section of exports: a count, then for each a name with its length, a kind and a place. */
function exportsKept(body, stays) {
  const kept = [];
  let [count, at] = number(body, 0);
  for (; count > 0; count--) {
    const [length, start] = number(body, at);
    const [, end] = number(body, start + length + 1);
    if (stays(body.toString("utf8", start, start + length))) kept.push(body.subarray(at, end));
    at = end;
  }
  return Buffer.concat([written(kept.length), ...kept]);
}

/** A number as modules write it, seven bits an octet and the lowest first, and where it ends. */
function number(octets, start) {
  let value = 0;
  let at = start;
  for (let shift = 0; ; shift += 7) {
    value += (octets[at] & 0x7f) * 2 ** shift;
    if (octets[at++] < 0x80) return [value, at];
  }
}

function written(value) {
  const octets = [];
  let rest = value;
  for (; rest >= 0x80; rest = Math.floor(rest / 0x80)) octets.push((rest % 0x80) | 0x80);
  return Buffer.from([...octets, rest]);
}

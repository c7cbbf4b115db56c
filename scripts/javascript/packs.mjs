// Which of our modules are served together. A pack holds what its first modules import, directly or not, as far as no
// pack before it does; what is left stands in files of its own, as the bundler divides it.

/** What a browser starts with: every page, what may begin before it, and the two workers. */
export const PAGE = "page.js";
export const BEGIN = "begin-python.js";
export const WORKERS = ["calculator-worker.js", "image-worker.js"];

/** By name of the file: what every page loads, what those at a tank share, and two libraries with what is around them. */
export const PACKS = {
  shelf: ["shelf/switch.js", "shelf/page-lines.js", "shelf/store.js", "shelf/standings.js", "shelf/words.js", "shelf/number.js", "shelf/verdict.js", "shelf/trouble-line.js"],
  "at-tank": ["shelf/log-sheet.js", "shelf/tank-fields.js", "shelf/fill.js", "shelf/share.js", "shelf/units-choice.js", "shelf/kept-calculations.js"],
  forms: ["form.js", "keep.js", "plot.js", "shelf/fill-news.js"],
  finding: ["finder.js"],
  codes: ["shelf/qr.js", "shelf/link.js"],
  "copies-of-all": ["shelf/copy.js", "shelf/copies.js", "shelf/file.js"],
  python: ["python-start.js", "python-image.js", "brought-image.js"],
};

/** Modules that keep an address of their own: tests and benches ask the page that is open for them. */
export const DOORS = [
  "runtime.js", "python-image.js", "python-start.js", "brought-image.js", "trust.js", "finder.js",
  ...["store", "front", "file", "csv", "digest", "copies", "share", "standings", "link", "qr", "day"].map((name) => `shelf/${name}.js`),
];

/** Other people's modules, by the name that ours import: the file of their package. */
export const LIBRARIES = { minisearch: "dist/es/index.js", idb: "build/index.js", uqr: "dist/index.mjs" };

/** Scripts that are no modules, served as files of their own. */
export const PLAIN = ["early.js"];

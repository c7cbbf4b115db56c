// The one door for text that becomes part of a page, and for a worker's address: the pages' policy lets no
// other through, where the browser knows trusted types. What comes here as HTML was painted by Python or by
// the build, escaped there, or is a page of this site; a script inside it runs nowhere, the policy sees to that.

const NAME = "mulmbook"; // as in the policy of docs/theme/main.html
const WORKERS = ["assets/calculator-worker.js", "assets/image-worker.js", "service-worker.js"];
const root = new URL("..", import.meta.url);

const policy = /** @type {any} */ (globalThis).trustedTypes?.createPolicy(NAME, {
  createHTML: (text) => text,
  createScriptURL: (address) => {
    if (!WORKERS.some((name) => new URL(name, root).href === address)) throw new TypeError(`${address} is no worker of this book`);
    return address;
  },
});

/** HTML that was escaped where it was made. */
export function painted(text) {
  return policy ? policy.createHTML(text) : text;
}

/** The address of one of the book's workers; any other throws where the browser knows trusted types. */
export function workerAt(url) {
  return policy ? policy.createScriptURL(url.href) : url;
}

// Shapes for the type check alone; nothing of this ships to the site.

// The runtime, which the build puts beside ours, with the types that its package brings.
declare module "*/pyodide.mjs" {
  export * from "pyodide";
}

// Our pages are HTML: what a selector finds there is an HTML element, of its own kind where a tag is named.
interface ParentNode {
  querySelector<Name extends keyof HTMLElementTagNameMap>(selectors: Name): HTMLElementTagNameMap[Name] | null;
  querySelector<Kind extends HTMLElement = HTMLElement>(selectors: string): Kind | null;
  querySelectorAll<Name extends keyof HTMLElementTagNameMap>(selectors: Name): NodeListOf<HTMLElementTagNameMap[Name]>;
  querySelectorAll<Kind extends HTMLElement = HTMLElement>(selectors: string): NodeListOf<Kind>;
}

// What a form says when Python has answered it; `detail` is the reply of calculators/bridge.py.
interface HTMLElementEventMap {
  answered: CustomEvent;
}

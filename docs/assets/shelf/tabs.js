// Tells the other tabs of this book what was written, and hears it from them.

const NAME = "mulmbook-shelf";

export class Tabs {
  #channel = null;

  /** @param {(news: {operations?: string[], local?: boolean}) => void} hear */
  constructor(hear) {
    if (typeof BroadcastChannel !== "function") return;
    this.#channel = new BroadcastChannel(NAME);
    this.#channel.onmessage = ({ data }) => hear(data ?? {});
  }

  tell(news) {
    this.#channel?.postMessage(news);
  }
}

/** Calls `look` when the page comes back to the front, since news may have passed a sleeping page by. */
export function onReturn(look) {
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && look());
  window.addEventListener("pageshow", (event) => event.persisted && look());
}

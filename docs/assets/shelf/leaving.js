// What is being typed when its page is left: it holds as if its field had been left first.

/** Take what was typed in a form as said when the page goes, sleeps, or gives way to another. */
export function holdOnLeaving(form) {
  let typed = null;
  form.addEventListener("input", ({ target }) => { typed = target; });
  form.addEventListener("change", () => { typed = null; });
  const hold = () => {
    if (!form.isConnected) return stop();
    typed?.dispatchEvent(new Event("change", { bubbles: true }));
    return undefined;
  };
  const sleeping = () => document.visibilityState === "hidden" && hold();
  const stop = () => {
    removeEventListener("pagehide", hold);
    document.removeEventListener("visibilitychange", sleeping);
    window.navigation?.removeEventListener("navigate", hold);
  };
  addEventListener("pagehide", hold);
  document.addEventListener("visibilitychange", sleeping);
  window.navigation?.addEventListener("navigate", hold); // where a link swaps the page
}

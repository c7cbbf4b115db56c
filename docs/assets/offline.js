// Registers the service worker and says when a new version of the book is ready.

let registration;

export async function watchForNews(root) {
  if (!("serviceWorker" in navigator)) return;
  if (!registration) {
    const first = !navigator.serviceWorker.controller;
    registration = await navigator.serviceWorker
      .register(new URL("service-worker.js", root), { scope: root.pathname, updateViaCache: "none" })
      .catch(() => null); // a host without https; the book works, but only with a signal
    if (!registration) return;
    navigator.serviceWorker.addEventListener("controllerchange", () => {
      if (!first || taken) location.reload();
    });
    registration.addEventListener("updatefound", () => follow(registration.installing));
    follow(registration.installing);
  }
  show();
}

let taken = false;

function follow(worker) {
  worker?.addEventListener("statechange", show);
}

function show() {
  const news = document.querySelector("#news");
  const waiting = registration?.waiting;
  news.hidden = !(waiting && navigator.serviceWorker.controller);
  news.querySelector("button").onclick = () => {
    taken = true;
    registration.waiting?.postMessage("take");
  };
}

// In every page while serve.py watches: hears what was written anew, and shows it. Never part of the site.

const root = new URL(document.querySelector("[data-root]").dataset.root, location.href);
let news;

function listen() {
  news?.close();
  const address = location.href.split(/[?#]/)[0].slice(root.href.length);
  news = new EventSource(`/watch-news?page=${encodeURIComponent(address)}`);
  news.onmessage = ({ data }) => show(JSON.parse(data), address);
}

function show({ pages, style, problem }, address) {
  if (problem) console.info(problem);
  if (style) {
    for (const link of document.querySelectorAll("link")) {
      if (link.rel === "stylesheet") link.href = `${link.href.split("?")[0]}?${Date.now()}`;
    }
  }
  if (pages === "all" || pages?.includes(address)) location.reload();
}

// A link may swap the page without loading it.
window.navigation?.addEventListener("currententrychange", listen);
listen();

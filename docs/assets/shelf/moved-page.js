// A page that moved: on to where its link leads, with whatever the address carried.

export function open() {
  /** @type {HTMLAnchorElement} */
  const link = document.querySelector("#moved a");
  location.replace(link.href + location.search + location.hash);
}

// A tank to another phone: the record travels in the link's own fragment, and as a code to photograph.

export function openHandOn(here, tank) {
  const said = here.find("#tank-link-said");
  here.find("#tank-link").onclick = async () => {
    const { linkTo } = await import("./link.js");
    const { url, picture } = await linkTo(here, tank);
    here.find("#tank-code").replaceChildren(...(picture ? [picture] : []));
    try {
      if (navigator.share) await navigator.share({ title: tank.name, url });
      else await navigator.clipboard.writeText(url);
      said.textContent = navigator.share ? "" : "The link is on the clipboard.";
    } catch {
      said.textContent = `Copy this link: ${url}`;
    }
  };
}

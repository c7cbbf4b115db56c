// Before the page is shown: says that scripts run here, and keeps the room of the switch between tanks where
// there are tanks, so that nothing moves when they come. The shelf says whether there are (shelf/switch.js).

(() => {
  document.documentElement.classList.add("with-script");
  try {
    document.documentElement.classList.toggle("has-tanks", localStorage.getItem("mulmbook-has-tanks") === "yes");
  } catch {
    // no storage here: no shelf, and no switch
  }
})();

// Light, dark, or as the device says. Runs before the page is shown, so that nothing flashes; page.js asks it
// again by an event. The style sheet has one set of dark rules, whose condition is changed here.

(() => {
  const KEY = "mulmbook-scheme";
  const DARK = "(prefers-color-scheme: dark)";
  /** @type {CSSMediaRule[]} */
  const rules = [];
  for (const sheet of document.styleSheets) {
    for (const rule of sheet.cssRules) if (rule instanceof CSSMediaRule && rule.conditionText === DARK) rules.push(rule);
  }
  /** @type {NodeListOf<HTMLMetaElement>} */
  const metas = document.querySelectorAll("meta[name=theme-color]"); // the colour of the browser's own bar
  const bars = [...metas].map((meta) => ({ meta, media: meta.media }));

  function apply() {
    let scheme = "device";
    try {
      scheme = localStorage.getItem(KEY) ?? scheme;
    } catch {
      // no storage here: as the device says
    }
    document.documentElement.dataset.scheme = scheme;
    for (const { meta, media } of bars) meta.media = scheme === "device" ? media : media.includes(scheme) ? "all" : "not all";
    for (const rule of rules) rule.media.mediaText = { dark: "all", light: "not all" }[scheme] ?? DARK;
  }

  document.addEventListener("scheme", apply);
  apply();
})();

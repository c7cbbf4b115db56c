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

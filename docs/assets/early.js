// Before the page is shown: keeps the room of the switch between tanks where there are tanks, so that it
// moves nothing when it comes. The shelf says whether there are (shelf/switch.js).

(() => {
  try {
    document.documentElement.classList.toggle("has-tanks", localStorage.getItem("mulmbook-has-tanks") === "yes");
  } catch {
    // no storage here: no shelf, and no switch
  }
})();

// Animals in danger: how much a third of the water is, of the tank here or of the size that is chosen. The words are
// those of the page's own table, which stands there for whoever runs no script.

import { element } from "./paint.js";
import { called, tankHere } from "./shelf/shelf-start.js";
import { onSwitch } from "./shelf/switch.js";

export function open() {
  const box = document.querySelector('a[href="#a-third"]').closest("p"); // the link to the table makes room for the field
  Object.assign(box, { id: "third", className: "third" });
  /** @type {NodeListOf<HTMLTableRowElement>} */
  const rows = document.querySelectorAll("#a-third ~ table tbody tr");
  const sizes = [...rows].map(({ cells }) => [...cells].map((cell) => cell.textContent));
  const choice = element("select", { id: "third-of" }, new Option("how much water?", ""), ...sizes.map(([size]) => new Option(size, String(Number.parseInt(size, 10)))));
  const said = element("output", { htmlFor: "third-of" });
  box.replaceChildren(element("label", { htmlFor: "third-of", textContent: "A third of" }), choice, said);
  const say = (whose) => {
    const row = sizes[choice.selectedIndex - 1]; // the first choice is of no size
    said.replaceChildren(...(row ? [whose, element("span", { className: "in-metric", textContent: row[1] }), element("span", { className: "in-us", textContent: row[2] })] : []));
  };
  choice.onchange = () => say("");
  const fromTank = async () => {
    const tank = await tankHere().catch(() => null); // no storage here: the field is there
    const size = tank && nearest(choice, tank.net_l);
    if (!size || !box.isConnected) return;
    choice.value = size.value;
    say(`${called(tank)}: `);
  };
  onSwitch(fromTank);
  return fromTank();
}

/** The size of the list that comes nearest; none for a tank whose water nobody has said, or that is beyond the list. */
function nearest(choice, litres) {
  const known = [...choice.options].filter((one) => one.value);
  if (!litres || litres > 1.2 * Number(known.at(-1).value) || litres < 0.8 * Number(known[0].value)) return null;
  const off = (one) => Math.abs(Number(one.value) - litres);
  return known.reduce((best, one) => (off(one) < off(best) ? one : best));
}

// When it was: now, unless it is set back.

import { element } from "../paint.js";
import { localDateTime, localTime } from "./when.js";

const HOUR = 3_600_000;
const BACK = [["now", 0], ["an hour ago", HOUR], ["six hours ago", 6 * HOUR], ["a day ago", 24 * HOUR]];

/** The line that sets the time back; `at()` is the moment, `box` the line. */
export function openWhen(given) {
  const field = element("input", { type: "datetime-local", id: "log-at", max: localTime(), value: given ? localTime(new Date(given)) : "" });
  const choice = element("select", { id: "log-back" }, ...BACK.map(([words, ms]) => new Option(String(words), String(ms))), new Option("at another time", "other"));
  const other = element("div", { className: "field", hidden: !given }, element("label", { htmlFor: "log-at", textContent: "At" }), field);
  if (given) choice.value = "other";
  choice.onchange = () => { other.hidden = choice.value !== "other"; };
  const box = element("div", { className: "log-when" }, element("div", { className: "field" }, element("label", { htmlFor: "log-back", textContent: "When" }), choice), other);
  const at = () => {
    if (choice.value !== "other") return localDateTime(new Date(Date.now() - Number(choice.value)));
    return localDateTime(field.value ? new Date(field.value) : new Date());
  };
  return { box, at };
}

// What was worked out of a tank before something was logged, or some days ago: it may not pass for calm, since what was
// logged, or what nobody has read for too long, may be what harms.

import { dayInWords } from "./day.js";

const OVERTAKEN = "Something changed since this was worked out.";
const CALM_HOLDS = 2 * 24 * 3_600_000; // ms; the days after which old readings and young soil count are many more

/** An answer that is kept with a tank, once its tank or its log has changed. */
export function overtaken(standing) {
  const { verdict, sentence } = standing?.outputs ?? {};
  if (verdict === "calm") return saying(standing, "unknown", OVERTAKEN);
  return verdict === "watch" && !sentence.endsWith(OVERTAKEN) ? saying(standing, verdict, `${sentence} ${OVERTAKEN}`) : standing;
}

/** The same where it was worked out some days ago. */
export function aged(standing, now = Date.now()) {
  if (standing?.outputs?.verdict !== "calm" || now - Date.parse(standing.made) < CALM_HOLDS) return standing;
  return saying(standing, "unknown", `It was calm on ${dayInWords(standing.made)}; to be worked out anew.`);
}

function saying(standing, verdict, sentence) {
  return { ...standing, from: null, outputs: { ...standing.outputs, verdict, sentence } };
}

// Runs Python in a worker: loads the trimmed runtime, then answers {id, question} with {id, answer}.
// Only text crosses: JSON in, JSON out. All files come from this site.

import { dropImage, keptImage } from "./python-image.js";
import { bringTables, imageAddress, listOfParts, startPython } from "./python-start.js";

const LOADED = 85; // percent of the bar for what is fetched; the rest is Python's own start

let answer;
let tablesOf; // brings the tables that a calculator alone needs, once each
const starting = begin().then(
  (fromImage) => postMessage({ ready: true, fromImage }),
  (wrong) => postMessage({ failed: String(wrong?.message ?? wrong) }),
);

self.onmessage = async ({ data: { id, question } }) => {
  await starting;
  try {
    await tablesOf(JSON.parse(question).calculator);
    postMessage({ id, answer: answer(question) });
  } catch (wrong) {
    postMessage({ id, error: String(wrong?.message ?? wrong) });
  }
};

async function begin() {
  const parts = await listOfParts();
  countBytes(parts.bytes);
  const image = await keptImage(imageAddress(parts));
  const fromImage = Boolean(image && (await open(parts, { _loadSnapshot: image }).then(() => true, () => dropImage(imageAddress(parts)))));
  if (!fromImage) await open(parts);
  postMessage({ percent: 100, text: "Ready." });
  return fromImage;
}

/** Start Python; ``extra`` may bring the image of an earlier visit, by a private option of the pinned runtime. */
async function open(parts, extra = {}) {
  const python = await startPython(parts, extra);
  postMessage({ percent: 95, text: "Python is starting." });
  tablesOf = (calculator) => bringTables(python, parts.tables[calculator] ?? {});
  answer = python.runPython("from calculators.bridge import answer\nanswer");
}

/** Count what arrives of the large files, for the progress bar. Their sizes come from the build. */
function countBytes(total) {
  const plainFetch = self.fetch;
  let loaded = 0;
  self.fetch = async (...request) => {
    const reply = await plainFetch(...request);
    if (!reply.body || !reply.ok) return reply;
    const counted = reply.body.pipeThrough(new TransformStream({
      transform(chunk, controller) {
        loaded += chunk.byteLength;
        postMessage({ percent: Math.min(LOADED, (LOADED * loaded) / total), text: "Python is loading. Fill in the form meanwhile." });
        controller.enqueue(chunk);
      },
    }));
    return new Response(counted, { headers: reply.headers, status: reply.status });
  };
}

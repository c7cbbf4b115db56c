// Makes the image of Python's memory, in the background and once for each version: a start of its own, so that
// nothing that a keeper asked can be in it.

import { isImageKept, keepImage } from "./python-image.js";
import { imageAddress, listOfParts, startPython } from "./python-start.js";

const ROOM = 200e6; // bytes that must be free: a keeper's tanks come before a faster start

make().then((made) => postMessage({ made }), (wrong) => postMessage({ failed: String(wrong?.message ?? wrong) }));

async function make() {
  const parts = await listOfParts();
  if (await isImageKept(imageAddress(parts))) return false;
  const { quota = 0, usage = 0 } = (await navigator.storage?.estimate?.()) ?? {}; // not every engine tells
  if (quota - usage < ROOM) return false;
  const python = await startPython(parts, { whole: true, _makeSnapshot: true }); // private option of the pinned runtime
  python.runPython("from calculators.bridge import import_all\nimport_all()");
  await keepImage(imageAddress(parts), python.makeMemorySnapshot());
  return true;
}

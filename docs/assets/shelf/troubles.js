// What the keeper should hear of the shelf's state, in sentences.

/** @returns {string[]} */
export function troublesOf({ view, aside, notMoved }, trouble) {
  const { broken, newer } = view.counts;
  const { incomplete, orphans } = view.shown();
  const lost = broken + incomplete;
  return [
    trouble && (trouble.reason === "newer" ? trouble.message : `${trouble.message} What you enter lasts until this page is closed.`),
    notMoved && `What an older version kept could not be moved to the shelf, and stays where it is. ${notMoved.message}`,
    lost && `${lost} ${lost === 1 ? "record of the shelf is" : "records of the shelf are"} damaged and not shown. All others are here.`,
    newer && `${newer} ${newer === 1 ? "record was" : "records were"} written by a newer version of the book. Take the new version to see ${newer === 1 ? "it" : "them"}.`,
    orphans && `${orphans} ${orphans === 1 ? "tank has" : "tanks have"} lost its own record. Its entries are here; give it its name again.`,
    aside.length && `${aside.length} ${aside.length === 1 ? "value" : "values"} of an older version could not be read and ${aside.length === 1 ? "is" : "are"} set aside as found.`,
  ].filter(Boolean);
}

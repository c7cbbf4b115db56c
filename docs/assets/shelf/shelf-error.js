// What can go wrong with the shelf, in words for the keeper.

/** @typedef {"full" | "closed" | "newer" | "broken"} Reason */

/** `unsaved` is the value that could not be written, so that the form can keep it. */
export class ShelfError extends Error {
  /**
   * @param {Reason} reason
   * @param {string} message
   * @param {unknown} [unsaved]
   */
  constructor(reason, message, unsaved = null) {
    super(message);
    this.name = "ShelfError";
    this.reason = reason;
    this.unsaved = unsaved;
  }
}

const WORDS = {
  full: "This device has no room left, so this was not saved. Make room, then save again.",
  closed: "This browser does not let the book store anything here. A private window may be the cause.",
  newer: "The shelf was written by a newer version of the book. Load this page anew, then save again.",
  broken: "This cannot be stored as it is.",
};

const REASONS = { QuotaExceededError: "full", VersionError: "newer", DataError: "broken", DataCloneError: "broken", ConstraintError: "broken" };

/** What a browser's refusal means; anything that we do not know counts as storage that is closed. */
export function shelfError(refusal, unsaved = null) {
  if (refusal instanceof ShelfError) return new ShelfError(refusal.reason, refusal.message, unsaved ?? refusal.unsaved);
  const reason = /** @type {Reason} */ (REASONS[refusal?.name] ?? "closed");
  return new ShelfError(reason, WORDS[reason], unsaved);
}

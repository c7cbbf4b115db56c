// Waiting, but not for ever.

/**
 * What a promise comes to, or nothing after so many milliseconds.
 * @template Awaited
 * @param {Promise<Awaited>} promise
 * @param {number} milliseconds
 * @returns {Promise<Awaited | undefined>}
 */
export function atMost(promise, milliseconds) {
  return Promise.race([promise, new Promise((done) => setTimeout(done, milliseconds))]);
}

// Whether the line is quick, by the first file of some size that came over it: mostly the page itself.

const LEAST = 8_000; // octets; what is smaller tells of the way there and back, not of the line
const QUICK = 1_000; // octets a millisecond, 8 Mbit/s: what the page still lacks is there in a fifth of a second

/** Resolves to whether it is, once such a file has come; never in a browser that does not tell. */
export function isLineQuick() {
  return new Promise((resolve) => {
    const hear = (entries) => {
      const file = entries.find(({ encodedBodySize, responseEnd, transferSize }) => responseEnd && encodedBodySize >= LEAST && transferSize); // not one kept from before
      if (file) resolve(file.encodedBodySize >= QUICK * (file.responseEnd - file.requestStart));
      return file;
    };
    if (hear(performance.getEntriesByType("navigation"))) return;
    new PerformanceObserver((list, observer) => hear(list.getEntries()) && observer.disconnect()).observe({ type: "resource", buffered: true });
  });
}

// What stands in a tank, by paths such as `tap.ph`.

/** What stands at a path of a tank; null where nothing does. */
export function at(tank, path) {
  return path.split(".").reduce((value, key) => value?.[key], tank) ?? null;
}

/** A tank with another value at a path; the one given stays as it is. */
export function withValue(tank, path, value) {
  const [key, ...rest] = path.split(".");
  return { ...tank, [key]: rest.length ? withValue(tank[key] ?? {}, rest.join("."), value) : value };
}

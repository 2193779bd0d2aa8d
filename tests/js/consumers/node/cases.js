function number(bits) {
  return new Float64Array(BigUint64Array.of(BigInt(`0x${bits}`)).buffer)[0];
}

/** A case's options as a caller writes them. */
export function written(value) {
  if (typeof value === "string") return /^[0-9a-f]{16}$/.test(value) ? number(value) : value;
  if (Array.isArray(value)) return value.map(written);
  if (typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, written(inner)]));
}

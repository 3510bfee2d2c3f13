/** Ids and times of entries, as every device makes them by itself. */

/** @param {bigint | number} value @param {number} digits */
const hex = (value, digits) => value.toString(16).padStart(digits, "0");

/**
 * A UUIDv7 (RFC 9562) in lower case. Not `crypto.randomUUID`: over plain http a phone has none.
 * @param {number} [now] milliseconds since 1970
 * @returns {string}
 */
export function uuid7(now = Date.now()) {
  const random = crypto.getRandomValues(new Uint8Array(10));
  random[0] = 0x70 | (random[0] & 0x0f);
  random[2] = 0x80 | (random[2] & 0x3f);
  const text = hex(now, 12) + Array.from(random, (byte) => hex(byte, 2)).join("");
  return [text.slice(0, 8), text.slice(8, 12), text.slice(12, 16), text.slice(16, 20), text.slice(20)].join("-");
}

/** Now, as RFC 3339 in UTC with milliseconds. @returns {string} */
export function instant() {
  return new Date().toISOString();
}

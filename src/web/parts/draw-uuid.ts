/** Where the version and the variant of a UUID stand. */
const VERSION = { at: 6, keep: 0x0f, put: 0x40 };
const VARIANT = { at: 8, keep: 0x3f, put: 0x80 };

/**
 * A name drawn by chance: a UUID of version 4 (RFC 9562, 5.4). `crypto.randomUUID` gives the same, but browsers have it only on pages of this
 * machine and of secure addresses, not in a network at an address without HTTPS.
 */
export function drawUuid(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  for (const { at, keep, put } of [VERSION, VARIANT]) bytes[at] = (bytes[at]! & keep) | put;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}

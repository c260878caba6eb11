/**
 * A UUID of version 7 (RFC 9562, 5.7): 48 bits of the clock, 74 of chance.
 * @param now ms since 1970
 * @param fill puts chance into bytes, as `crypto.getRandomValues` does
 */
export function makeUuidV7(now: number, fill: (bytes: Uint8Array) => void): string {
  const bytes = new Uint8Array(16);
  fill(bytes);
  for (let i = 0; i < 6; i += 1) bytes[i] = Math.floor(now / 256 ** (5 - i)) % 256;
  bytes[6] = 0x70 | (bytes[6]! & 0x0f);
  bytes[8] = 0x80 | (bytes[8]! & 0x3f);
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}

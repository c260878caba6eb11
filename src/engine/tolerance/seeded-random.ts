/**
 * Numbers that look drawn by chance, from 0 up to but not 1; the same seed gives the same ones on every machine. A counter in steps of the golden
 * ratio, mixed by multiplication and shifts of 32 bits: even enough for trying places, for nothing secret.
 * @param seed a whole number
 */
export function makeRandom(seed: number): () => number {
  let counter = seed | 0;
  return () => {
    counter = (counter + 0x9e3779b9) | 0;
    let mixed = Math.imul(counter ^ (counter >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
}

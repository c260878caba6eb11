const SIGNS = 'abcdefghijklmnopqrstuvwxyz0123456789';

/** The id of a new person, drawn by chance and never used again: 12 small letters and digits. */
export function drawPersonId(): string {
  // A byte does not fall evenly on 36 signs; what is left of 12 is far more than enough for people.
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => SIGNS[byte % SIGNS.length]).join('');
}

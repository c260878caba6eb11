/** Edits that one call carries, at most what the server takes (wire/edits.ts says 500; its schema is not loaded for a number). */
export const MOST_EDITS_A_CALL = 200;

import * as z from 'zod';

/** UUID version 7 (RFC 9562): its first 48 bits are the device's clock in ms, which orders nothing here. */
export const recordId = z
  .string()
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/, 'a UUID of version 7');

/** SHA-256 as 64 hexadecimal digits. */
export const hash = z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 of 64 hexadecimal digits');

/** A piece: the first 24 digits of a hash of its panel's permanent key and its serial, see `namePiece`. */
export const pieceId = z.string().regex(/^[0-9a-f]{24}$/, 'the id of a piece: 24 hexadecimal digits');

/** An installation of the program on a tablet or in a browser: drawn by chance, never used again. */
export const deviceId = z.string().regex(/^[a-z0-9]{16}$/, 'the id of a device: 16 small letters and digits');

/** A person of the people list. */
export const personId = z.string().regex(/^[a-z0-9]{12}$/, 'the id of a person: 12 small letters and digits');

/** A moment in UTC, as ISO 8601 writes it. */
export const moment = z.iso.datetime();

/** Words that a person typed on a tablet. Line breaks are kept; nothing of it goes into a spreadsheet unescaped. */
export const words = z.string().min(1).max(2000);

export const mark = z.string().min(1).max(60);
export const millimetres = z.number().min(-100_000).max(100_000);

/** 1: before the cage, mould face and edges; 2: before the pour, trowelled face. */
export const stage = z.union([z.literal(1), z.literal(2)]);

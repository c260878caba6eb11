import type { SurveyReading } from './survey-file.ts';

/** A sign that stands where bytes were no text. */
const UNREADABLE = '\uFFFD';

/**
 * Text of bytes in the encodings in which instruments and spreadsheets write: UTF-8, UTF-16 with its mark at the start, else
 * Windows-1252, in which every byte is a sign.
 */
export function decodeText(bytes: Uint8Array): { readonly text: string; readonly encoding: SurveyReading['encoding'] } {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return { text: new TextDecoder('utf-16le').decode(bytes), encoding: 'UTF-16' };
  if (first === 0xfe && second === 0xff) return { text: new TextDecoder('utf-16be').decode(bytes), encoding: 'UTF-16' };
  const text = new TextDecoder('utf-8').decode(bytes);
  if (!text.includes(UNREADABLE)) return { text, encoding: 'UTF-8' };
  return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'Windows-1252' };
}

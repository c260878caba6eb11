import { isRecord } from '../job/json-record.ts';
import { pieceId, recordId } from './values.ts';

/** Id and piece of a text that is no record, as far as it has them: it may be one of a newer program. */
export function nameText(text: string): { readonly id: string | null; readonly piece: string | null } {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { id: null, piece: null };
  }
  if (!isRecord(value)) return { id: null, piece: null };
  const [id, piece] = [recordId.safeParse(value.id), pieceId.safeParse(value.piece)];
  return { id: id.success ? id.data : null, piece: piece.success ? piece.data : null };
}

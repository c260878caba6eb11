import type { AsCastConnection, Remedy } from '../../../../assess/as-cast/as-cast-report.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { PrintKey } from './print-key.tsx';
import type { TemplateFormat } from './save-template.ts';

const FORMATS: readonly TemplateFormat[] = ['dxf', 'pdf'];

/** The drilling template of a remedy that changes holes, at 1:1. */
export function TemplateKeys({
  yard,
  piece,
  found,
  remedy,
}: {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly found: AsCastConnection;
  readonly remedy: Remedy;
}) {
  if (remedy.change.holes.length === 0) return null;
  return (
    <>
      {FORMATS.map((format) => (
        <PrintKey
          key={format}
          words={`Template ${format.toUpperCase()}`}
          name={`Template ${format.toUpperCase()} of ${found.connection.mark}: ${remedy.kind}`}
          onWrite={async () => {
            // The writers come when somebody wants a template.
            const { saveTemplate } = await import('./save-template.ts');
            await saveTemplate(yard, piece, found, remedy, format);
          }}
        />
      ))}
    </>
  );
}

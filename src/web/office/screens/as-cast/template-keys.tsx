import { useSignal } from '@preact/signals';
import type { AsCastConnection, Remedy } from '../../../../assess/as-cast/as-cast-report.ts';
import { Button } from '../../../parts/button.tsx';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { tell } from '../../state/messages.ts';
import { tellError } from '../../state/use-asked.ts';
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
  const isWriting = useSignal(false);
  if (remedy.change.holes.length === 0) return null;
  const save = async (format: TemplateFormat) => {
    isWriting.value = true;
    try {
      // The writers come when somebody wants a template.
      const { saveTemplate } = await import('./save-template.ts');
      await saveTemplate(yard, piece, found, remedy, format);
    } catch (error) {
      tell('fault', `The template was not written: ${tellError(error)}`);
    }
    isWriting.value = false;
  };
  return (
    <>
      {FORMATS.map((format) => (
        <Button
          key={format}
          kind="quiet"
          isDisabled={isWriting.value}
          name={`Template ${format.toUpperCase()} of ${found.connection.mark}: ${remedy.kind}`}
          onPress={() => void save(format)}
        >
          {`Template ${format.toUpperCase()}`}
        </Button>
      ))}
    </>
  );
}

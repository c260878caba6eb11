import { findInsertAssembly, type InsertAssembly } from '../../../../assess/assembly-of-insert.ts';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import { drawAssemblySection } from '../../../../drawing/assembly-section.ts';
import type { Drawing } from '../../../../drawing/drawing.ts';
import { DrawingError } from '../../../../drawing/drawing-error.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { Empty } from '../../../parts/notice.tsx';

/** Paper on which a section is drawn [mm]. */
const PAPER = { width: 120, height: 170 };

/** The section as a drawing, or why there is none. */
function draw({ assembly, faceDown, bed }: InsertAssembly): Drawing | string {
  try {
    return drawAssemblySection(assembly, { ...PAPER, faceDown, bed });
  } catch (error) {
    if (error instanceof DrawingError) return error.message;
    throw error;
  }
}

/** The section of the first insert as it stands in the form, the mould face at the bottom; live with every change. */
export function SectionView({ looked: { index, panel, inserts } }: { readonly looked: LookedAt }) {
  const [first] = inserts;
  const found = first === undefined ? null : findInsertAssembly(index, panel.mark, first.castIn.id);
  if (found === null)
    return (
      <Empty title="No section yet">
        <p>
          How insert {first?.castIn.id} is held in the form is not decided. Choose a way of holding for it: then its
          section is drawn to scale.
        </p>
      </Empty>
    );
  const drawing = draw(found);
  if (typeof drawing === 'string') return <p>{drawing}</p>;
  return <DrawingView drawing={drawing} title={`Section of insert ${first?.castIn.id ?? ''} in the form, to scale`} />;
}

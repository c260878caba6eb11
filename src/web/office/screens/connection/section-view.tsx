import { findInsertAssembly, type InsertAssembly } from '../../../../assess/assembly-of-insert.ts';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import { drawAssemblySection, type ScaledPicture } from '../../../../drawing/assembly-section.ts';
import type { Drawing } from '../../../../drawing/drawing.ts';
import { DrawingError } from '../../../../drawing/drawing-error.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { Empty } from '../../../parts/notice.tsx';

/** Papers on which a section may be drawn [mm]: the narrower, the larger its letters on the screen. */
const PAPERS = [120, 150, 180].map((width) => ({ width, height: 190 }));
/** A section smaller than 1 : this is drawn on a wider paper instead. */
const SMALL = 2.5;

/** The section as a drawing, or why there is none. */
function draw({ assembly, faceDown, bed }: InsertAssembly): Drawing | string {
  let why = '';
  let best: ScaledPicture | null = null;
  for (const paper of PAPERS) {
    try {
      const drawn = drawAssemblySection(assembly, { ...paper, faceDown, bed });
      if (best === null || drawn.scale < best.scale) best = drawn;
    } catch (error) {
      if (!(error instanceof DrawingError)) throw error;
      why = error.message;
    }
    if (best !== null && best.scale <= SMALL) break;
  }
  return best ?? why;
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

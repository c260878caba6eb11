import type { Signal } from '@preact/signals';
import type { StandingSide } from '../../../../drawing/as-cast/deviation-marks.ts';
import type { Panel } from '../../../../job/documents/panel.ts';
import { ChoiceField } from '../../../parts/field.tsx';

const SIDES: readonly StandingSide[] = ['outside', 'inside'];

/** From which side the panel is looked at. */
export function SideChoice({ panel, side }: { readonly panel: Panel; readonly side: Signal<StandingSide> }) {
  return (
    <ChoiceField
      label="Seen on"
      value={side.value}
      options={SIDES.map((value) => ({
        value,
        text: value === panel.drawnFace ? `the ${value} face, as drawn` : `the ${value} face`,
      }))}
      onChange={(value) => {
        side.value = value;
        return null;
      }}
    />
  );
}

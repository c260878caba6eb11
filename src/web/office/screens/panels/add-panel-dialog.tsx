import { useSignal } from '@preact/signals';
import { useLocation } from 'wouter-preact';
import type { Panel } from '../../../../job/documents/panel.ts';
import { addPanel, makeRectangle, nextName } from '../../../../job/edit/commands/edit-panels.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { drawUuid } from '../../../parts/draw-uuid.ts';
import { ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields } from '../../../parts/page.tsx';
import { addresses } from '../../state/addresses.ts';
import type { JobSession } from '../../state/session.ts';

type Face = Panel['drawnFace'];

const FACES: readonly { readonly value: Face; readonly text: string }[] = [
  { value: 'outside', text: 'outside' },
  { value: 'inside', text: 'inside' },
];

/** A rectangular panel, typed; its outline can be changed where it is drawn. */
export function AddPanelDialog({ session, onClose }: { readonly session: JobSession; readonly onClose: () => void }) {
  const [, go] = useLocation();
  const { panels, concretes } = session.file.job;
  const last = panels.at(-1);
  const failed = useSignal<string | null>(null);
  const typed = useSignal({
    mark: nextName(last?.mark ?? 'P00', new Set(panels.map((panel) => panel.mark))),
    concrete: last?.concrete ?? concretes[0]?.id ?? '',
    length_mm: 6000,
    height_mm: 3000,
    thickness_mm: last?.thickness_mm ?? 180,
    drawnFace: (last?.drawnFace ?? 'outside') as Face,
    faceDown: (last?.faceDown ?? 'outside') as Face,
  });
  const set = (change: Partial<typeof typed.value>): null => {
    typed.value = { ...typed.value, ...change };
    return null;
  };
  const size = (key: 'length_mm' | 'height_mm' | 'thickness_mm') => (value: number | null) =>
    value === null || value <= 0 ? 'expected more than 0' : set({ [key]: value });
  const { value } = typed;
  const add = () => {
    const panel = makeRectangle({ key: drawUuid(), ...value });
    failed.value = session.commit(`Panel ${value.mark} added`, addPanel(panel));
    if (failed.value === null) go(addresses.panel(session.id, value.mark));
  };
  return (
    <Dialog
      title="Add a panel"
      onClose={onClose}
      foot={
        <>
          <Button onPress={onClose}>Leave it</Button>
          <Button kind="main" onPress={add}>
            Add and open it
          </Button>
        </>
      }
    >
      {failed.value !== null && <Notice kind="fault">{failed.value}</Notice>}
      <Fields>
        <TextField label="Mark" value={value.mark} onChange={(mark) => set({ mark })} />
        <ChoiceField
          label="Concrete"
          value={value.concrete}
          options={concretes.map(({ id, name }) => ({ value: id, text: name === null ? id : `${id}: ${name}` }))}
          onChange={(concrete) => set({ concrete })}
        />
        <QuantityField label="Length" quantity="length" value={value.length_mm} onChange={size('length_mm')} />
        <QuantityField label="Height" quantity="length" value={value.height_mm} onChange={size('height_mm')} />
        <QuantityField label="Thickness" quantity="length" value={value.thickness_mm} onChange={size('thickness_mm')} />
        <ChoiceField
          label="Drawn face"
          hint="Places are measured on this face"
          value={value.drawnFace}
          options={FACES}
          onChange={(drawnFace) => set({ drawnFace })}
        />
        <ChoiceField
          label="Face down in the form"
          hint="The mould face; the other one is trowelled"
          value={value.faceDown}
          options={FACES}
          onChange={(faceDown) => set({ faceDown })}
        />
      </Fields>
    </Dialog>
  );
}

import { useSignal } from '@preact/signals';
import { type StandardName, standardNames } from '../../../../engine/standards/standard-name.ts';
import { makeRectangle } from '../../../../job/edit/commands/edit-panels.ts';
import { makeNewJob } from '../../../../job/make-new-job.ts';
import { Button } from '../../../parts/button.tsx';
import { tellCall } from '../../../parts/call.ts';
import { Dialog } from '../../../parts/dialog.tsx';
import { drawUuid } from '../../../parts/draw-uuid.ts';
import { ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields } from '../../../parts/page.tsx';
import { calls } from '../../state/office-calls.ts';
import { tellError } from '../../state/use-asked.ts';
import { loadSampleLibrary } from './sample-library.ts';

type LibraryKind = 'sample' | 'empty';

/** What a person types of a new job; the sizes are usual ones, to be changed. */
interface Typed {
  readonly name: string;
  readonly number: string;
  readonly standard: StandardName;
  readonly library: LibraryKind;
  readonly strength_MPa: number;
  readonly mark: string;
  readonly length_mm: number;
  readonly height_mm: number;
  readonly thickness_mm: number;
}

const USUAL: Typed = {
  name: '',
  number: '',
  standard: 'EN 1992-4',
  library: 'sample',
  strength_MPa: 40,
  mark: 'P01',
  length_mm: 6000,
  height_mm: 3000,
  thickness_mm: 180,
};

async function makeFile(typed: Typed) {
  const library = typed.library === 'sample' ? await loadSampleLibrary() : null;
  const panel = makeRectangle({
    key: drawUuid(),
    mark: typed.mark,
    concrete: '',
    length_mm: typed.length_mm,
    height_mm: typed.height_mm,
    thickness_mm: typed.thickness_mm,
    drawnFace: 'outside',
    faceDown: 'outside',
  });
  const number = typed.number === '' ? null : typed.number;
  return makeNewJob({ ...typed, number, library, panel });
}

/** Begins a job with its first panel. */
export function NewJobDialog({
  onClose,
  onMade,
}: {
  readonly onClose: () => void;
  readonly onMade: (id: string) => void;
}) {
  const typed = useSignal<Typed>(USUAL);
  const failed = useSignal<string | null>(null);
  const isBusy = useSignal(false);
  const set = (change: Partial<Typed>): null => {
    typed.value = { ...typed.value, ...change };
    return null;
  };
  const size = (key: 'length_mm' | 'height_mm' | 'thickness_mm' | 'strength_MPa') => (value: number | null) =>
    value === null || value <= 0 ? 'expected more than 0' : set({ [key]: value });
  const make = async () => {
    if (typed.value.name === '') {
      failed.value = 'The job has no name yet.';
      return;
    }
    isBusy.value = true;
    try {
      const called = await calls.createJob(await makeFile(typed.value));
      failed.value = tellCall(called);
      if (called.kind === 'answered') onMade(called.value.id);
    } catch (error) {
      failed.value = tellError(error);
    }
    isBusy.value = false;
  };
  const { name, number, standard, library, strength_MPa, mark, length_mm, height_mm, thickness_mm } = typed.value;
  return (
    <Dialog
      title="New job"
      onClose={onClose}
      foot={
        <>
          <Button onPress={onClose}>Leave it</Button>
          <Button kind="main" isDisabled={isBusy.value} onPress={() => void make()}>
            Make the job
          </Button>
        </>
      }
    >
      {failed.value !== null && <Notice kind="fault">{failed.value}</Notice>}
      <TextField label="Name" value={name} placeholder="Harbour hall" onChange={(value) => set({ name: value })} />
      <Fields>
        <TextField label="Number, where it has one" value={number} onChange={(value) => set({ number: value })} />
        <ChoiceField
          label="Checked by"
          value={standard}
          options={standardNames.map((value) => ({ value, text: value }))}
          hint="Can be changed under Rules"
          onChange={(value) => set({ standard: value })}
        />
      </Fields>
      <ChoiceField
        label="Library: inserts, details, ways of holding, beds"
        value={library}
        options={[
          { value: 'sample', text: 'The invented sample, to try things out' },
          { value: 'empty', text: 'Empty: the catalogue is typed or read later' },
        ]}
        hint={
          library === 'sample'
            ? 'No maker sells these inserts: nothing may be built by them'
            : 'Before an insert can be placed, the catalogue needs its type'
        }
        onChange={(value) => set({ library: value })}
      />
      <h3>Its first panel</h3>
      <Fields>
        <TextField label="Mark" value={mark} onChange={(value) => set({ mark: value })} />
        <QuantityField
          label="Concrete, cylinder strength"
          quantity="stress"
          value={strength_MPa}
          onChange={size('strength_MPa')}
        />
        <QuantityField label="Length" quantity="length" value={length_mm} onChange={size('length_mm')} />
        <QuantityField label="Height" quantity="length" value={height_mm} onChange={size('height_mm')} />
        <QuantityField label="Thickness" quantity="length" value={thickness_mm} onChange={size('thickness_mm')} />
      </Fields>
    </Dialog>
  );
}

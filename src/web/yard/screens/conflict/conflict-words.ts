import type { SlotState } from '../../../../records/fold/piece-state.ts';
import type { FactRecord } from '../../../../records/record.ts';

/** What a slot asks, in words. */
export function nameSlot(slot: string): string {
  const known: Readonly<Record<string, string>> = {
    started: 'which piece it is',
    mark: 'how it is marked',
    scrapped: 'why it was scrapped',
    location: 'where it stands',
    form: 'the form',
    'sight 1': 'looked at before the cage',
    'sight 2': 'looked at before the pour',
    'place 1': 'taped before the cage',
    'place 2': 'taped before the pour',
    decision: 'decided',
    clearance: 'clearance',
    poured: 'poured',
    screed: 'looked at after screeding',
    stripped: 'stripped',
    uncovered: 'opened up',
    cap: 'its cap',
    delivery: 'caps and threads on delivery',
    sealed: 'filled and sealed',
    'proof plan': 'pull tests that are planned',
  };
  const [what, connection] = slot.split(' ');
  if (connection !== undefined && what === 'remedy') return 'what becomes of a connection';
  if (connection !== undefined && what === 'offered') return 'whether its plate goes on';
  if (connection !== undefined && what === 'tightened') return 'how it was tightened';
  return known[slot] ?? slot;
}

const FIELDS: Readonly<Record<string, string>> = {
  x_mm: 'x',
  y_mm: 'y',
  level_mm: 'below the face',
  type: 'type as shown',
  face: 'face as shown',
  firm: 'firm',
  level: 'level',
  plumb: 'plumb',
  cap: 'cap on',
  plateOff: 'plate off',
  mortarOut: 'mortar out',
  thread: 'thread runs by hand',
  turns: 'turns by hand',
  capBack: 'cap back in',
  is: 'cap',
  note: 'note',
  reason: 'reason',
  mark: 'mark',
  serial: 'number',
  pour: 'pour',
  bed: 'bed',
  place: 'place',
  verdict: 'decided',
  condition: 'condition',
  caps: 'caps in',
  threads: 'threads clean',
  connectionMark: 'connection',
  wentOn: 'plate went on',
  remedy: 'remedy',
  words: 'which is',
  how: 'tightened',
  torque_Nm: 'torque [Nm]',
  with: 'filled with',
  load_kN: 'load [kN]',
};

function sayValue(name: string, value: unknown): string {
  if (value === null) return name.endsWith('_mm') || name === 'turns' ? 'not taken' : 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'NO';
  if (typeof value === 'number') return name.endsWith('_mm') ? `${value} mm` : String(value);
  return String(value);
}

/** What a record says, a line each: name and value in words. */
function listSaid(record: FactRecord): ReadonlyMap<string, string> {
  if (record.kind === 'form-checked')
    return new Map(record.body.measures.map(({ what, measured_mm }) => [what, `${measured_mm} mm`]));
  if (record.kind === 'stripped')
    return new Map(record.body.plates.map(({ part, out, back }) => [`plates ${part}`, `${back} of ${out} back`]));
  const said = Object.entries(record.body).flatMap(([name, value]): [string, string][] => {
    const words = FIELDS[name];
    return words === undefined ? [] : [[words, sayValue(name, value)]];
  });
  return new Map([['', record.kind.replaceAll('-', ' ')], ...said]);
}

/** One line of two or more answers beside each other. */
export interface ComparedLine {
  readonly name: string;
  /** In the order of the records; null: that one says nothing of it. */
  readonly values: readonly (string | null)[];
  readonly differs: boolean;
}

/** Answers beside each other, what differs first. */
export function compareSaid(records: readonly FactRecord[]): readonly ComparedLine[] {
  const said = records.map(listSaid);
  const names = [...new Set(said.flatMap((one) => [...one.keys()]))];
  const lines = names.map((name): ComparedLine => {
    const values = said.map((one) => one.get(name) ?? null);
    return { name, values, differs: new Set(values).size > 1 };
  });
  // Of what is the same, the kind and what nobody took are not worth a line.
  const worth = lines.filter(({ name, differs, values }) => differs || (name !== '' && values[0] !== 'not taken'));
  return [...worth.filter(({ differs }) => differs), ...worth.filter(({ differs }) => !differs)];
}

/** Conflicts about what must be now: of records by an older check key nobody has to decide. The piece first, then by insert. */
export function listConflicts(
  slots: Iterable<SlotState>,
  keys: ReadonlyMap<string, string>,
): readonly { readonly slot: SlotState; readonly latest: readonly FactRecord[] }[] {
  return [...slots].flatMap((slot) => {
    if (!slot.isConflict) return [];
    const key = slot.item === null ? null : keys.get(slot.item);
    const latest = slot.latest.filter(({ checkKey }) => slot.item === null || checkKey === null || checkKey === key);
    return latest.length < 2 ? [] : [{ slot, latest }];
  });
}

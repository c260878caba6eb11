/** How an insert is held until the concrete is hard. */
export const holdingMethodNames = [
  'nail-on plate',
  'stick-on plate',
  'magnet',
  'recess former',
  'template board',
  'through the side form',
  'chair',
  'bridging bar',
  'tied to the cage',
] as const;

export type HoldingMethodName = (typeof holdingMethodNames)[number];

/** Where it sits meanwhile: on the form, under the open face, or against a side form. */
export type HoldingPlace = 'mould face' | 'trowelled face' | 'edge';

export type FormMaterial = 'timber' | 'steel';

/** What a method asks for and gives. */
export interface HoldingMethod {
  /** Where it may be used, and when: 1 before the cage, 2 with the cage. */
  readonly stages: Readonly<Partial<Record<HoldingPlace, 1 | 2>>>;
  /** What the form there must be made of; null: whatever. */
  readonly form: FormMaterial | null;
  /** What is fixed first, and what then. */
  readonly order: readonly string[];
  /** To be ticked before it is fixed: plain sentences. */
  readonly before: readonly string[];
  /** To be ticked after. */
  readonly after: readonly string[];
  /** Values that the method needs and that are not known here, with who supplies them. */
  readonly supplied: readonly { readonly what: string; readonly who: string }[];
}

const SCREWED_ON = 'the insert is screwed on down to the stop, by hand';

const methods: Readonly<Record<HoldingMethodName, HoldingMethod>> = {
  'nail-on plate': {
    stages: { 'mould face': 1, edge: 1 },
    form: 'timber',
    order: ['the plate is nailed to the form at its place', SCREWED_ON],
    before: ['Form face is sound timber, flat and clean at the plate.'],
    after: ['All nails are home and the plate lies flat.', 'Insert is tight on the plate and stands square.'],
    supplied: [{ what: 'number and size of the nails', who: "the plate's maker" }],
  },
  'stick-on plate': {
    stages: { 'mould face': 1, edge: 1 },
    form: null,
    order: [
      'the plate is pressed onto the form at its place',
      SCREWED_ON,
      'release agent goes on after, around the plate',
    ],
    before: [
      'Form face is dry and free of oil at the plate; no release agent yet.',
      "Form face is no colder than the plate's maker allows, and above the dew point.",
    ],
    after: [
      "The minutes that the plate's maker asks for have passed before the insert is screwed on.",
      'Plate and insert hold when pulled by hand.',
      'Release agent is sprayed after, around the plate and not under it.',
    ],
    supplied: [
      { what: 'least temperature of the form face', who: "the plate's maker" },
      { what: 'minutes to wait after pressing on', who: "the plate's maker" },
    ],
  },
  magnet: {
    stages: { 'mould face': 1, edge: 1 },
    form: 'steel',
    order: ['the insert is screwed onto the magnet', 'the magnet is set onto the form at its place'],
    before: ['Form face is clean bare steel at the magnet.', 'Magnet is clean: no mortar or filings on its face.'],
    after: ['Magnet lies flat all round.', 'Magnet cannot be pushed aside by hand.'],
    supplied: [{ what: 'holding force and the insert that it is meant for', who: "the magnet's maker" }],
  },
  'recess former': {
    stages: { 'mould face': 1, edge: 1 },
    form: null,
    order: ['the former is fixed to the form at its place', SCREWED_ON],
    before: ['Former is whole and clean, its face fits the form.'],
    after: [
      'Former is fast on the form and lies flat, no gap for mortar.',
      'Insert is tight on the former and stands square.',
    ],
    supplied: [{ what: 'how the former is fixed to this form', who: "the former's maker, or the yard" }],
  },
  'template board': {
    stages: { 'mould face': 1, 'trowelled face': 2 },
    form: null,
    order: ['the inserts are screwed onto the board', 'the board is laid to the datum edges', 'the board is fixed'],
    before: ['Board carries the mark of this connection, right side up, its holes checked by one diagonal.'],
    after: [
      'Board is measured from the datum edges, both ends of it.',
      'Board is fast; every insert is tight on it and stands square.',
    ],
    supplied: [{ what: 'how true the board is drilled', who: 'the yard, by measuring it' }],
  },
  'through the side form': {
    stages: { edge: 1 },
    form: null,
    order: ['the side form is drilled at the place', 'the insert is bolted through it from outside'],
    before: ["Hole in the side form is of the bolt's size, not worn, and at its height above the bed."],
    after: [
      'Nut or bolt is tight; the insert cannot turn or tip.',
      'Side form stands at its angle with the insert on it.',
      'Bolt can be taken out before the side form is stripped.',
    ],
    supplied: [{ what: 'size of the hole and of the bolt', who: 'the yard' }],
  },
  chair: {
    stages: { 'trowelled face': 2 },
    form: null,
    order: ['the chair is set on the form', 'the insert stands on it foot down', 'the insert is tied to the cage'],
    before: [
      'Chair is the one named here, by its height.',
      'Chair stands on the form or on hard concrete, not in insulation.',
    ],
    after: [
      'Foot lies flat on the chair.',
      'Chair and insert are tied; the hose cannot kick them over.',
      'Cap is on and sealed against mortar.',
    ],
    supplied: [
      { what: 'how far the legs sink', who: 'the yard, by a trial on this form' },
      { what: 'load that the chair carries', who: "the chair's maker" },
    ],
  },
  'bridging bar': {
    stages: { 'trowelled face': 2 },
    form: null,
    order: ['the insert is bolted under the bar', 'the bar is laid across the side forms', 'the bar is clamped'],
    before: ['Bar is straight and reaches over both side forms.'],
    after: [
      'Insert hangs plumb, tight under the bar.',
      'Bar is clamped at both ends.',
      'Thread is closed against mortar by its bolt or cap.',
    ],
    supplied: [{ what: 'how far the bar bends under the inserts', who: 'the yard, by a trial' }],
  },
  'tied to the cage': {
    stages: { 'trowelled face': 2 },
    form: null,
    order: ['the cage is in and stands on its spacers', 'the insert is tied to it'],
    before: ['Cage is tied and cannot be pushed down or aside by hand.'],
    after: [
      'Insert is tied to two bars at least, plumb, and cannot be turned by hand.',
      'Top is measured from the top of the side form.',
      'Cap is on and sealed against mortar.',
    ],
    supplied: [{ what: 'number and size of the ties', who: 'the yard' }],
  },
};

/** What a method of holding asks for and gives. */
export function findHoldingMethod(name: HoldingMethodName): HoldingMethod {
  return methods[name];
}

/** When it is fixed at that place, 1 before the cage, 2 with the cage; null: the method does not hold there. */
export function findHoldingStage(name: HoldingMethodName, place: HoldingPlace): 1 | 2 | null {
  return methods[name].stages[place] ?? null;
}

/** Where a method may be used. */
export function listHoldingPlaces(name: HoldingMethodName): readonly HoldingPlace[] {
  const places: readonly HoldingPlace[] = ['mould face', 'trowelled face', 'edge'];
  return places.filter((place) => findHoldingStage(name, place) !== null);
}

import { describe } from 'vitest';
import { refuseAll } from './wrong-inputs.ts';

const onFace = { id: 'A', x_mm: 500, y_mm: 300, face: 'outside' };
const onEdge = { id: 'C', edge: 1, along_mm: 600, fromOutside_mm: 60 };
const right = {
  calc: 'mould-view',
  outline_mm: [
    [0, 0],
    [3000, 0],
    [3000, 2000],
    [0, 2000],
  ],
  drawnFace: 'outside',
  faceDown: 'inside',
  turn_deg: 90,
  datum: 'bottom-left',
  thickness_mm: 180,
  inserts: [onFace, onEdge],
};
const without = (key: keyof typeof right) => Object.fromEntries(Object.entries(right).filter(([name]) => name !== key));
const inserts = (...changed: readonly unknown[]) => ({ ...right, inserts: changed });
const outline = (...corners: readonly unknown[]) => ({ ...right, outline_mm: corners });

describe('wrong inputs of mould-view', () => {
  refuseAll(right, [
    ['no outline', without('outline_mm'), 'outline_mm', /list of corners/],
    ['two corners', outline([0, 0], [3000, 0]), 'outline_mm', /at least three corners/],
    [
      'an outline that crosses itself',
      outline([0, 0], [3000, 2000], [3000, 0], [0, 2000]),
      'outline_mm',
      /sides 0 and 2 .* cross or touch, expected corners in order around the panel/,
    ],
    ['a corner twice', outline([0, 0], [3000, 0], [3000, 2000], [0, 0]), 'outline_mm', /corners 0 and 3/],
    ['corners on one line', outline([0, 0], [1000, 0], [3000, 0]), 'outline_mm', /on one line/],
    ['a corner of three numbers', outline([0, 0], [3000, 0, 5], [0, 2000]), 'outline_mm[1]', /point \[x, y\]/],
    ['a corner that is no number', outline([0, 0], [Number.NaN, 0], [0, 2000]), 'outline_mm[1][0]', /number/],
    ['a corner as text', outline([0, 0], ['3000', 0], [0, 2000]), 'outline_mm[1][0]', /mm/],
    ['no drawn face', without('drawnFace'), 'drawnFace', /"outside" or "inside"/],
    ['a drawn face by its old name', { ...right, drawnFace: 'near' }, 'drawnFace', /"outside" or "inside"/],
    ['no face down', without('faceDown'), 'faceDown', /lies on the form/],
    ['a face down that is an edge', { ...right, faceDown: 'edge' }, 'faceDown', /"outside" or "inside"/],
    ['no turn', without('turn_deg'), 'turn_deg', /0, 90, 180 or 270/],
    ['a turn of 45°', { ...right, turn_deg: 45 }, 'turn_deg', /0, 90, 180 or 270/],
    ['a turn of -90°', { ...right, turn_deg: -90 }, 'turn_deg', /0, 90, 180 or 270/],
    ['a turn as text', { ...right, turn_deg: '90' }, 'turn_deg', /0, 90, 180 or 270/],
    ['no datum', without('datum'), 'datum', /"top-right"/],
    ['a datum misspelt', { ...right, datum: 'botom-left' }, 'datum', /"bottom-left"/],
    ['a datum the other way round', { ...right, datum: 'left-bottom' }, 'datum', /"bottom-left"/],
    ['no thickness', without('thickness_mm'), 'thickness_mm', /thickness of the panel/],
    ['a negative thickness', { ...right, thickness_mm: -180 }, 'thickness_mm', /above 0/],
    ['a thickness in metres', { ...right, thickness_mm: 1e5 }, 'thickness_mm', /at most 10000 mm/],
    ['no inserts', without('inserts'), 'inserts', /list of inserts/],
    ['inserts that are no list', { ...right, inserts: onFace }, 'inserts', /list of inserts/],
    ['an insert that is a point', inserts([500, 300]), 'inserts[0]', /place on a face .* or on an edge/],
    ['an insert without name', inserts({ ...onFace, id: '' }), 'inserts[0].id', /name of the insert/],
    ['two inserts of one name', inserts(onFace, onFace), 'inserts[1].id', /"A" names two inserts/],
    ['an insert on a face and an edge', inserts({ ...onFace, edge: 1 }), 'inserts[0].x_mm', /not both/],
    ['a face beside an edge', inserts(onFace, { ...onEdge, face: 'inside' }), 'inserts[1].face', /not both/],
    ['an insert without y', inserts({ id: 'A', x_mm: 500, face: 'outside' }), 'inserts[0].y_mm', /is missing/],
    ['an insert without face', inserts({ id: 'A', x_mm: 500, y_mm: 300 }), 'inserts[0].face', /is missing/],
    ['an insert without place', inserts({ id: 'A' }), 'inserts[0].x_mm', /is missing/],
    [
      'an edge insert without height',
      inserts({ id: 'C', edge: 1, along_mm: 5 }),
      'inserts[0].fromOutside_mm',
      /is missing/,
    ],
    [
      'an insert outside the outline',
      inserts({ ...onFace, x_mm: 3000.1 }),
      'inserts[0]',
      /insert "A" at \(3000\.1, 300\) mm lies outside the outline/,
    ],
    [
      'an edge beyond the outline',
      inserts({ ...onEdge, edge: 4 }),
      'inserts[0].edge',
      /no side of the outline, expected 0 to 3/,
    ],
    ['a half edge', inserts({ ...onEdge, edge: 0.5 }), 'inserts[0].edge', /number of a side/],
    ['a negative edge', inserts({ ...onEdge, edge: -1 }), 'inserts[0].edge', /counted from 0/],
    [
      'a place beyond the end of its side',
      inserts(onFace, { ...onEdge, along_mm: 2001 }),
      'inserts[1].along_mm',
      /length of 2000 mm/,
    ],
    ['a place before its side', inserts({ ...onEdge, along_mm: -1 }), 'inserts[0].along_mm', /from 0/],
    [
      'a height beyond the thickness',
      inserts({ ...onEdge, fromOutside_mm: 181 }),
      'inserts[0].fromOutside_mm',
      /thickness of 180 mm/,
    ],
    [
      'a height that is no number',
      inserts({ ...onEdge, fromOutside_mm: Number.NaN }),
      'inserts[0].fromOutside_mm',
      /outside face/,
    ],
    ['an unknown key in an insert', inserts({ ...onFace, z_mm: 3 }), 'inserts[0].z_mm', /is not a key/],
    ['an unknown key', { ...right, mirror: true }, 'mirror', /is not a key/],
  ]);
});

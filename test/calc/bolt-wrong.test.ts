import { describe } from 'vitest';
import { BODY, RIGHT } from './bolts.ts';
import { refuseAll } from './wrong-inputs.ts';

const without = (key: keyof typeof RIGHT) => Object.fromEntries(Object.entries(RIGHT).filter(([name]) => name !== key));
const steel = RIGHT.insertThread;

describe('wrong inputs of bolt', () => {
  refuseAll(RIGHT, [
    ['no thread', without('thread'), 'thread', /one of "M6", .*"M24"/],
    ['an inch thread', { ...RIGHT, thread: '5/8-11' }, 'thread', /metric coarse thread/],
    ['a fine thread', { ...RIGHT, thread: 'M16x1.5' }, 'thread', /one of "M6"/],
    ['no class', without('propertyClass'), 'propertyClass', /one of "4.6"/],
    ['a class as a number', { ...RIGHT, propertyClass: 8.8 }, 'propertyClass', /"8.8"/],
    ['no depth', without('threadDepth_mm'), 'threadDepth_mm', /length of full thread.*above 0/],
    ['no depth at all', { ...RIGHT, threadDepth_mm: 0 }, 'threadDepth_mm', /above 0/],
    [
      'a thread before the face',
      { ...RIGHT, threadStartsBelowFace_mm: -2 },
      'threadStartsBelowFace_mm',
      /from 0 to 10000 mm/,
    ],
    ['another finish', { ...RIGHT, boltFinish: 'zn' }, 'boltFinish', /"plain", "zinc", "galvanised", "stainless"/],
    ['American spelling', { ...RIGHT, insertFinish: 'galvanized' }, 'insertFinish', /"galvanised"/],
    ['no class of thread', without('insertThreadClass'), 'insertThreadClass', /"6H", "6AZ", "6AX"/],
    ['a nut class', { ...RIGHT, insertThreadClass: '6G' }, 'insertThreadClass', /"6H", "6AZ", "6AX"/],
    ['a missing maximum', without('maxTorque_Nm'), 'maxTorque_Nm', /null where it is not known/],
    ['a maximum of nothing', { ...RIGHT, maxTorque_Nm: 0 }, 'maxTorque_Nm', /above 0/],
    ['a grip as text', { ...RIGHT, grip_mm: '15' }, 'grip_mm', /between washer and face, a number from 0/],
    ['no washers', without('washer_mm'), 'washer_mm', /thickness of the washers/],
    ['engagement below 0', { ...RIGHT, minEngagement_mm: -16 }, 'minEngagement_mm', /above 0/],
    ['a missing engagement', without('minEngagement_mm'), 'minEngagement_mm', /null: found here/],
    ['no steel', without('insertThread'), 'insertThread', /"yield_MPa", "ultimate_MPa"/],
    ['half a steel', { ...RIGHT, insertThread: { yield_MPa: 355 } }, 'insertThread.ultimate_MPa', /tensile strength/],
    [
      'yield above strength',
      { ...RIGHT, insertThread: { ...steel, yield_MPa: 500 } },
      'insertThread.yield_MPa',
      /500 MPa is above ultimate_MPa = 490 MPa/,
    ],
    ['no stock', without('stockLengths_mm'), 'stockLengths_mm', /list of lengths in mm, or null/],
    ['an empty stock', { ...RIGHT, stockLengths_mm: [] }, 'stockLengths_mm', /at least one length/],
    ['a length of nothing', { ...RIGHT, stockLengths_mm: [30, 0] }, 'stockLengths_mm[1]', /above 0/],
    ['no nut factor', without('nutFactor'), 'nutFactor', /T = K d F/],
    ['a nut factor in per cent', { ...RIGHT, nutFactor: 20 }, 'nutFactor', /at most 1/],
    ['preload in per cent', { ...RIGHT, preloadFraction: 70 }, 'preloadFraction', /from 0 to 1/],
    [
      'a range beside its factor',
      { ...RIGHT, nutFactorRange: [0.25, 0.3] },
      'nutFactorRange',
      /does not hold nutFactor = 0.2/,
    ],
    ['one end of a range', { ...RIGHT, nutFactorRange: [0.1] }, 'nutFactorRange', /\[least, greatest\]/],
    [
      'a body thinner than its thread',
      { ...RIGHT, insertBody: { ...BODY, diameter_mm: 16 } },
      'insertBody.diameter_mm',
      /no wall/,
    ],
    [
      'an oversize thread that leaves no wall',
      { ...RIGHT, insertThreadClass: '6AZ', insertBody: { ...BODY, diameter_mm: 16.3 } },
      'insertBody.diameter_mm',
      /no wall around a thread of 16.34 mm/,
    ],
    [
      'a hole as wide as the body',
      { ...RIGHT, insertBody: { diameter_mm: 24, crossHole: { diameter_mm: 24, bore_mm: 0 } } },
      'insertBody.crossHole.diameter_mm',
      /not less than the body of 24 mm/,
    ],
    [
      'a bore as wide as the body',
      { ...RIGHT, insertBody: { diameter_mm: 24, crossHole: { diameter_mm: 10, bore_mm: 24 } } },
      'insertBody.crossHole.bore_mm',
      /not less than the body/,
    ],
    [
      'a body without a word on its hole',
      { ...RIGHT, insertBody: { diameter_mm: 24 } },
      'insertBody.crossHole',
      /or null where there is none/,
    ],
    ['a body as a number', { ...RIGHT, insertBody: 24 }, 'insertBody', /"diameter_mm", "crossHole"/],
    ['no concrete at all', { ...RIGHT, concreteTension_kN: 0 }, 'concreteTension_kN', /above 0/],
    ['packers as one number', { ...RIGHT, packers_mm: 10 }, 'packers_mm', /\[least, greatest\] in mm, or a list/],
    ['no packers at all', { ...RIGHT, packers_mm: [] }, 'packers_mm', /at least one range .* leave the key out/],
    ['packers backward', { ...RIGHT, packers_mm: [20, 0] }, 'packers_mm', /\[20, 0\] runs backward/],
    [
      'a range backward in a list',
      {
        ...RIGHT,
        packers_mm: [
          [0, 10],
          [20, 10],
        ],
      },
      'packers_mm[1]',
      /\[20, 10\] runs backward/,
    ],
    ['negative packers', { ...RIGHT, packers_mm: [-5, 10] }, 'packers_mm[0]', /from 0 to 10000/],
    ['a coating in mm by its key', { ...RIGHT, boltCoating_mm: 0.05 }, 'boltCoating_mm', /is not a key/],
    [
      'a hole below the bolt',
      { ...RIGHT, plateHole: { diameter_mm: 16, slot_mm: 0 } },
      'plateHole.diameter_mm',
      /more than 16 mm/,
    ],
    ['a hole without its slot', { ...RIGHT, plateHole: { diameter_mm: 18 } }, 'plateHole.slot_mm', /0: a round hole/],
    ['a number that is none', { ...RIGHT, grip_mm: Number.NaN }, 'grip_mm', /a number from 0/],
  ]);
});

import { describe } from 'vitest';
import { refuseAll } from './wrong-inputs.ts';

const log = [
  { hours: 0, degC: 22 },
  { hours: 12, degC: 35 },
  { hours: 24, degC: 30 },
];
const right = {
  calc: 'maturity',
  method: 'Nurse-Saul',
  datum_degC: 0,
  activation_kJ_per_mol: 33.5,
  reference_degC: 20,
  log,
};
const without = (key: keyof typeof right) => Object.fromEntries(Object.entries(right).filter(([name]) => name !== key));
const readings = (...changed: readonly unknown[]) => ({ ...right, log: changed });

describe('wrong inputs of maturity', () => {
  refuseAll(right, [
    ['no method', without('method'), 'method', /"Nurse-Saul" or "Arrhenius"/],
    ['another method', { ...right, method: 'Nurse–Saul' }, 'method', /"Nurse-Saul" or "Arrhenius"/],
    ['no datum for Nurse-Saul', without('datum_degC'), 'datum_degC', /is missing/],
    [
      'no energy for Arrhenius',
      { ...without('activation_kJ_per_mol'), method: 'Arrhenius' },
      'activation_kJ_per_mol',
      /is missing/,
    ],
    ['no reference', without('reference_degC'), 'reference_degC', /reference temperature/],
    ['no log', without('log'), 'log', /list of readings/],
    ['a datum in kelvin', { ...right, datum_degC: 263 }, 'datum_degC', /-30 to 30 °C/],
    ['a datum as text', { ...right, datum_degC: '0' }, 'datum_degC', /datum/],
    [
      'a reference at the datum',
      { ...right, reference_degC: 0 },
      'reference_degC',
      /not above the datum, expected more than 0/,
    ],
    ['a reference below the datum', { ...right, datum_degC: 5, reference_degC: 4 }, 'reference_degC', /more than 5 °C/],
    ['a reference in kelvin', { ...right, reference_degC: 293 }, 'reference_degC', /-20 to 60 °C/],
    ['energy in J/mol', { ...right, activation_kJ_per_mol: 33500 }, 'activation_kJ_per_mol', /at most 200 kJ\/mol/],
    ['no energy at all', { ...right, activation_kJ_per_mol: 0 }, 'activation_kJ_per_mol', /above 0/],
    ['an empty log', readings(), 'log', /at least two readings/],
    ['one reading', readings(log[0]), 'log', /at least two readings/],
    ['a log that is no list', { ...right, log: { hours: 0, degC: 20 } }, 'log', /list of readings/],
    ['a reading that is a pair', readings([0, 20], [1, 20]), 'log[0]', /reading \{ "hours"/],
    ['a reading without temperature', readings(log[0], { hours: 2 }), 'log[1].degC', /temperature of the concrete/],
    ['a reading without time', readings({ degC: 2 }, log[1]), 'log[0].hours', /time of the reading/],
    ['a time before the start', readings({ hours: -1, degC: 20 }, log[1]), 'log[0].hours', /0 to 1000000 hours/],
    ['the same time twice', readings(log[0], log[1], log[1]), 'log[2].hours', /12 h does not come after 12 h/],
    ['time running back', readings(log[0], log[2], log[1]), 'log[2].hours', /12 h does not come after 24 h/],
    ['a temperature in °F', readings(log[0], { hours: 3, degC: 151 }), 'log[1].degC', /-50 to 150 °C/],
    ['a temperature that is missing', readings(log[0], { hours: 3, degC: null }), 'log[1].degC', /temperature/],
    [
      'an unknown key in a reading',
      readings(log[0], { hours: 3, degC: 20, sensor: 1 }),
      'log[1].sensor',
      /is not a key/,
    ],
    ['an unknown key', { ...right, unit: 'h' }, 'unit', /is not a key/],
  ]);
});

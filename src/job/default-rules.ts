import type { Rules } from './documents/rules.ts';

/** The rules taken where a folder of schedules brings none: the standard's own factors, and the safe side of what it leaves open. */
export const defaultRules: Rules = {
  format: 'onepour-rules',
  version: 1,
  id: 'default-rules',
  edition: '1',
  name: 'EN 1992-4, recommended values',
  standard: 'EN 1992-4',
  partialFactors: { concrete: 1.5, steelTension: null, steelShear: null },
  cover: { behindFoot_mm: 20 },
  tolerances: { position_mm: 5, level_mm: 3, thickness_mm: 5, form_mm: 3 },
  acceptance: null,
  positionZones: null,
  belowFace: { aim_mm: 2, most_mm: 5 },
  clearance_mm: 5,
  exposure: 'XC4',
  environment: 'C3',
  defaults: { cracked: true, engagement_d: 1, boltClass: '8.8' },
  statements: [],
};

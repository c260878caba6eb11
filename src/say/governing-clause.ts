import type { GoverningMode } from '../engine/checks/result.ts';
import type { Edition } from '../engine/standards/edition.ts';
import { findEdition } from '../engine/standards/editions.ts';
import type { StandardName } from '../engine/standards/standard-name.ts';

/** Under which of an edition's clauses each mode is computed. */
const CLAUSES: Partial<Record<GoverningMode, keyof Edition['clauses']>> = {
  'steel-tension': 'steelTension',
  'concrete-cone': 'cone',
  'pull-out': 'pullOut',
  'blow-out': 'blowOut',
  splitting: 'splitting',
  'steel-shear': 'steelShear',
  'pry-out': 'pryOut',
  'concrete-edge': 'edge',
};

/** The clause of a mode as a result names it (`EN 1992-4:2018 7.2.1.4`); null for a mode that has none of its own. */
export function findGoverningClause(standard: StandardName, mode: GoverningMode): string | null {
  const name = CLAUSES[mode];
  return name === undefined ? null : findEdition(standard).clauses[name].reference;
}

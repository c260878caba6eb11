import type { Combination } from '../../../../job/documents/connection.ts';
import type { Quantity } from '../../../parts/units.ts';

/** Values of a load combination in the order in which they are shown, typed and pasted. */
export const LOAD_COLUMNS = [
  { key: 'N_kN', head: 'N', quantity: 'force' },
  { key: 'Vx_kN', head: 'Vx', quantity: 'force' },
  { key: 'Vy_kN', head: 'Vy', quantity: 'force' },
  { key: 'Mx_kNm', head: 'Mx', quantity: 'moment' },
  { key: 'My_kNm', head: 'My', quantity: 'moment' },
  { key: 'T_kNm', head: 'T', quantity: 'moment' },
] as const satisfies readonly { readonly key: keyof Combination; readonly head: string; readonly quantity: Quantity }[];

import { ACI_318_19, ACI_318M_19 } from './aci-318-19/edition.ts';
import { AS_5216_2021 } from './as-5216-2021/edition.ts';
import type { Edition } from './edition.ts';
import { EN_1992_4_2018 } from './en-1992-4-2018/edition.ts';
import type { StandardName } from './standard-name.ts';

const EDITIONS: Readonly<Record<StandardName, Edition>> = {
  'EN 1992-4': EN_1992_4_2018,
  'AS 5216': AS_5216_2021,
  'ACI 318-19': ACI_318_19,
  'ACI 318M-19': ACI_318M_19,
};

/** The edition behind a standard's name. */
export function findEdition(name: StandardName): Edition {
  return EDITIONS[name];
}

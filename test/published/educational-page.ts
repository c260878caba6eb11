// Source: a general educational page on anchors by ACI 318-08, appendix D. It holds faults: see wrong-sources.test.ts.

import { PULL_OUT_BASIC, PULL_OUT_RESISTANCE } from '../../src/engine/standards/aci-318-19/pull-out.ts';
import { DESIGN_STRENGTH, PULL_OUT_PHI } from '../../src/engine/standards/aci-318-19/strength-reduction.ts';
import { POUND, PSI, SQUARE_INCH } from './inch-pound.ts';
import type { PublishedCase } from './published.ts';

const pullOut: PublishedCase = {
  entry: 'edu-pullout',
  how: "4000 psi as the entry has it; four times one bolt, the page's way; the engine judges the most loaded one",
  values: {
    'phiNpn group': (by) => {
      const basic = by.clause(PULL_OUT_BASIC, 0.654 * SQUARE_INCH, 4000 * PSI);
      return (4 * by.clause(DESIGN_STRENGTH, by.clause(PULL_OUT_RESISTANCE, 1, basic), PULL_OUT_PHI)) / POUND;
    },
  },
};

export const CASES: readonly PublishedCase[] = [pullOut];

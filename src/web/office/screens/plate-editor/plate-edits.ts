import type { Draft } from 'immer';
import type { Fixture } from '../../../../job/documents/fixture.ts';

/** Changes a plate; a text says why it may not be so. */
export type EditPlate = (label: string, change: (fixture: Draft<Fixture>) => void) => string | null;

import type { JobStore } from './job-store.ts';
import type { RecordStore } from './record-store.ts';

/** All that an office keeps: jobs and what was recorded of them, in the same transactions. */
export interface Store extends JobStore, RecordStore {}

import type { JobFile } from './documents/job-file.ts';

type Library = JobFile['library'];

/** Library documents with nothing in them, for a job that brings none. */
export const emptyCatalogue: Library['catalogue'] = {
  format: 'onepour-catalogue',
  version: 1,
  id: 'own-catalogue',
  edition: '1',
  name: 'Inserts of this job',
  items: [],
};

export const emptyDetails: Library['details'] = {
  format: 'onepour-details',
  version: 1,
  id: 'no-details',
  edition: '1',
  name: 'No standard details',
  details: [],
};

export const emptyHolding: Library['holding'] = {
  format: 'onepour-holding-parts',
  version: 1,
  id: 'no-holding-parts',
  edition: '1',
  name: 'No holding parts',
  parts: [],
  ways: [],
};

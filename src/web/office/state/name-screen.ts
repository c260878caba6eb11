import { matchRoute, type Parser } from 'wouter-preact';

/** Screens of a job by their addresses, with their names; what is in the address is told. */
const NAMES: readonly (readonly [pattern: string, name: (part: string) => string])[] = [
  ['/job/:job/panels', () => 'Panels'],
  ['/job/:job/panel/:part', (mark) => `Panel ${mark}`],
  ['/job/:job/connection/:part/insert', (mark) => `Insert for connection ${mark}`],
  ['/job/:job/connection/:part', (mark) => `Connection ${mark}`],
  ['/job/:job/pours', () => 'Pours'],
  ['/job/:job/pours/:part', (pour) => `Pour ${pour}`],
  ['/job/:job/parts', () => 'Parts'],
  ['/job/:job/catalogue', () => 'Catalogue'],
  ['/job/:job/catalogue/:part', (item) => `Insert type ${item}`],
  ['/job/:job/details', () => 'Standard details'],
  ['/job/:job/rules', () => 'Rules'],
  ['/job/:job/revisions', () => 'Revisions'],
  ['/job/:job/transmittal', () => 'Transmittal list'],
  ['/job/:job/files', () => 'Files of the job'],
  ['/job/:job/yard', () => 'Yard'],
  ['/job/:job/yard/:part', () => 'A piece in the yard'],
  ['/job/:job/learned', () => 'What the yard learns'],
  ['/job/:job/learned/plates', () => 'Chances of plates'],
  ['/job/:job/learned/plates/:part', (mark) => `Chance of the plate of ${mark}`],
  ['/people', () => 'People'],
  ['/files', () => 'Files of a new job'],
  ['/', () => 'Jobs'],
];

/** What the screen at an address is called, for the title of the page and for those who hear it. */
export function nameScreen(parser: Parser, location: string): string {
  for (const [pattern, name] of NAMES) {
    const [isMatch, parts] = matchRoute(parser, pattern, location);
    if (isMatch) return name(parts[1] ?? '');
  }
  return 'Nothing is here';
}

/** The title of the page: the screen first, since a tab shows little more. */
export function writeTitle(screen: string, job: string | null): string {
  return [screen, ...(job === null ? [] : [job]), 'Onepour'].join(' – ');
}

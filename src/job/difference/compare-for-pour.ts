import { describeGeneral, describeLibrary, describePanel, markOf } from './describe-difference.ts';
import type { JobDifference } from './job-difference.ts';
import { summariseDifference } from './summarise-difference.ts';

/** What changed since an earlier revision, as a sheet says it. */
export interface PourChanges {
  readonly since: string;
  readonly lines: readonly string[];
  /** Keys of cast-in items that are new or another since then. */
  readonly castIns: ReadonlySet<string>;
}

/** What changed since an earlier revision, for the people of one pour: the whole in one line, then only what touches its panels. */
export function compareForPour(difference: JobDifference, marks: readonly string[]): PourChanges {
  const isOurs = (mark: string) => marks.includes(mark);
  const panels = difference.panels
    .filter((panel) => isOurs(markOf(panel)))
    .flatMap((panel) => describePanel(panel).map((text) => `▲ ${markOf(panel)}: ${text}`));
  const library = difference.library.filter((one) => one.panels.some(isOurs)).map((one) => `▲ ${describeLibrary(one)}`);
  const general = difference.general
    .filter(({ of }) => of === 'rules' || of === 'yard')
    .map((one) => `▲ ${describeGeneral(one)}`);
  const castIns = difference.panels.flatMap((panel) =>
    panel.kind !== 'changed'
      ? []
      : panel.castIns.flatMap((one) =>
          one.kind === 'changed' ? [one.after.key] : one.kind === 'added' ? [one.castIn.key] : [],
        ),
  );
  const { before } = difference.revisions;
  return {
    since: before?.letter ?? 'not issued',
    lines: [`Whole job: ${summariseDifference(difference)}.`, ...panels, ...library, ...general],
    castIns: new Set(castIns),
  };
}

/** Two states under one letter: nobody could tell their sheets apart. Null where the letters differ, or nothing does. */
export function findReusedLetter({ revisions, panels, library, general }: JobDifference): string | null {
  const letter = revisions.after?.letter;
  if (letter === undefined || letter !== revisions.before?.letter) return null;
  if (panels.length + library.length + general.length === 0) return null;
  return `revision ${letter} was given before to another content: give this one a letter of its own`;
}

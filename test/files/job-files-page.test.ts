import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { schedules } from '../../src/files/csv/columns.ts';

const page = readFileSync(join(import.meta.dirname, '..', '..', 'docs', 'job-files.md'), 'utf8');

it.each(schedules.map((schedule) => [schedule.file, schedule] as const))(
  'the page on job files names the columns of %s, no others',
  (file, schedule) => {
    const section = page.split(`### ${file}\n`)[1]!.split('\n### ')[0]!;
    const named = section
      .split('\n')
      .filter((line) => line.startsWith('| `'))
      .flatMap((line) => [...line.split('|')[1]!.matchAll(/`([^`]+)`/g)].map((match) => match[1]!));
    expect(named.sort()).toEqual(schedule.columns.map((column) => column.name).sort());
  },
);

it.each(schedules.map((schedule) => [schedule.file, schedule] as const))(
  'the page on job files marks the columns of %s that every row needs, no others',
  (file, schedule) => {
    const section = page.split(`### ${file}\n`)[1]!.split('\n### ')[0]!;
    const needed = section
      .split('\n')
      .filter((line) => line.startsWith('| `') && line.split('|')[2]!.trim() === 'yes')
      .flatMap((line) => [...line.split('|')[1]!.matchAll(/`([^`]+)`/g)].map((match) => match[1]!));
    const isNeeded = (column: (typeof schedule.columns)[number]) => !('ifBlank' in column) && !column.isOptional;
    expect(needed.sort()).toEqual(
      schedule.columns
        .filter(isNeeded)
        .map((column) => column.name)
        .sort(),
    );
  },
);

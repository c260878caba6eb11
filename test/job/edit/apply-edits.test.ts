import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { applyEdits } from '../../../src/job/edit/apply-edits.ts';
import type { Edit, Patch } from '../../../src/job/edit/edit.ts';
import { editJob, turnBack } from '../../../src/job/edit/edit-job.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { sampleJob } from '../sample-job.ts';

const AT = '2026-11-30T08:00:00Z';

function sampleFile(): JobFile {
  const read = readJobDocument(sampleJob());
  if (!read.ok) throw new Error('the sample job is wrong');
  return read.file;
}

function editOf(...changes: Patch[]): Edit {
  return { id: '1', label: 'By hand', at: AT, changes, back: changes };
}

/** What is said of an edit that is refused. */
function refuse(...changes: Patch[]): string {
  const applied = applyEdits(sampleFile(), [editOf(...changes)]);
  if (applied.ok) throw new Error('taken');
  return applied.faults.map(({ text }) => text).join('; ');
}

describe('edits of unknown origin', () => {
  it('are made one after the other, and turned back', () => {
    const made = editJob(
      sampleFile(),
      'Remarks',
      ({ job }) => {
        job.project.remarks.push('one', 'two', 'three');
        job.panels[0]!.thickness_mm = 200;
      },
      { id: '1', at: AT },
    );
    const cut = editJob(
      made!.file,
      'Fewer',
      ({ job }) => {
        job.project.remarks.length = 1;
      },
      { id: '2', at: AT },
    );
    expect(applyEdits(sampleFile(), [made!.edit, cut!.edit])).toEqual({ ok: true, file: cut!.file });
    const back = [turnBack(cut!.edit, 'back', { id: '3', at: AT }), turnBack(made!.edit, 'back', { id: '4', at: AT })];
    expect(applyEdits(cut!.file, back)).toEqual({ ok: true, file: sampleFile() });
  });

  it('may add and remove in one edit what stands at one place', () => {
    const path = ['job', 'project', 'remarks', 0];
    const edit = editOf(
      { op: 'add', path, value: 'gone' },
      { op: 'replace', path, value: 'here' },
      { op: 'remove', path },
    );
    expect(applyEdits(sampleFile(), [edit])).toEqual({ ok: true, file: sampleFile() });
  });

  it('are refused where a path leads nowhere', () => {
    const remark = { value: 'x' };
    for (const [patch, says] of [
      [{ op: 'replace', path: ['job', 'panels', 1, 'mark'], ...remark }, 'job.panels[1].mark'],
      [{ op: 'replace', path: ['job', 'panels', 'first', 'mark'], ...remark }, 'job.panels.first.mark'],
      [{ op: 'replace', path: ['job', 'panels', 1], ...remark }, 'a place in a list of 1'],
      [{ op: 'add', path: ['job', 'panels', 2], ...remark }, 'a place in a list of 1'],
      [{ op: 'remove', path: ['job', 'project', 'colour'] }, 'a value that is there'],
      [{ op: 'replace', path: ['job', 'project', 'name', 'first'], ...remark }, 'a list or a group of values'],
      [{ op: 'remove', path: [] }, 'a file that is replaced as a whole'],
    ] as const)
      expect(refuse(patch as Patch)).toContain(says);
  });

  it('cannot blow up a list', () => {
    expect(refuse({ op: 'replace', path: ['job', 'panels', 'length'], value: 4_000_000_000 })).toContain(
      'a place in a list of 1',
    );
    expect(refuse({ op: 'add', path: ['job', 'panels', 4_000_000_000], value: 1 })).toContain('a place in a list of 1');
  });

  it('cannot reach what all objects share', () => {
    expect(refuse({ op: 'add', path: ['job', '__proto__', 'isNice'], value: true })).toContain('leads nowhere');
    expect(refuse({ op: 'add', path: ['job', 'constructor', 'prototype'], value: true })).toContain('leads nowhere');
    expect(refuse({ op: 'add', path: ['job', '__proto__'], value: {} })).toContain('leads nowhere');
    expect('isNice' in {}).toBe(false);
  });

  it('are refused where the job is not sound after them', () => {
    expect(refuse({ op: 'replace', path: ['job', 'castIns', 0, 'panel'], value: 'P9' })).toContain('P9');
    expect(refuse({ op: 'replace', path: [], value: { format: 'other' } })).not.toBe('');
  });

  it('are refused where a value is left out that a reader would fill in', () => {
    const says = refuse({ op: 'remove', path: ['job', 'project', 'remarks'] });
    expect(says).toBe('a value is left out: expected every value written out, as in a job that was opened');
  });
});

import { describe, expect, it } from 'vitest';
import { listFindings, listPanelFindings } from '../../../src/assess/set-out/list-findings.ts';
import { planPour } from '../../../src/assess/set-out/plan-pour.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { writeNumbers } from '../../../src/assess/set-out/write-numbers.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { mustRead } from '../../job/read.ts';
import { sampleBed, sampleCastIn, sampleJob, samplePour } from '../../job/sample-job.ts';

describe('findings', () => {
  const castIns = ['1', '2', '3', '4'].map((id, i) => sampleCastIn(id, 3000 - 500 * i, 500));
  const index = indexJob(mustRead(sampleJob({ castIns, connections: [], beds: [sampleBed()], pours: [samplePour()] })));

  it('tells once what is the same of several, by the numbers of the sheet', () => {
    const setOut = setOutPanel(index, 'P1', null);
    const text = 'how it is held in the form is not decided: choose a way of holding for it';
    expect(listPanelFindings(setOut)).toEqual([{ isStop: false, words: `no. 1–4: ${text}` }]);
  });

  it('puts stops first, and says of each panel how much more there is to look at', () => {
    const [first, ...others] = listFindings(planPour(index, 'T1'));
    expect(first).toEqual({
      isStop: true,
      words: 'the job has no revision: do not pour; only "for construction" may be poured',
    });
    expect(others.map(({ words }) => words)).toEqual(['P1: 1 to look at, on its list of inserts']);
  });

  it('writes runs of numbers together', () => {
    expect(writeNumbers([7, 1, 3, 2, 10, 11])).toBe('1–3 7 10 11');
    expect(writeNumbers([5])).toBe('5');
  });
});

import { expect, it } from 'vitest';
import { NO_TOOL, readTool } from '../../../src/web/pieces/survey/read-tool.ts';

it('a tool that nobody named is none; a part of it that nobody read is a gap; a day that is none is refused', () => {
  expect(readTool(NO_TOOL)).toBeNull();
  expect(readTool({ name: '', serial: '12', until: '' })).toEqual({ name: null, serial: '12', calibratedUntil: null });
  expect(readTool({ name: 'tape', serial: '', until: '2028-02-29' })).toMatchObject({ calibratedUntil: '2028-02-29' });
  for (const until of ['2027-02-29', '2027-13-01', '31.3.2027'])
    expect(readTool({ ...NO_TOOL, until })).toMatch(/is no day/);
});

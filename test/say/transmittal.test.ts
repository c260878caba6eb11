import { describe, expect, it } from 'vitest';
import { listPanelMoves, listRecipients } from '../../src/say/transmittal.ts';

const revision = (letter: string, ...recipients: { name: string; firm: string | null; how: string }[]) => ({
  letter,
  status: 'for approval',
  date: '2026-11-02',
  fingerprint: 'f'.repeat(64),
  recipients,
});

describe('a transmittal', () => {
  it('has each recipient once, of the same name and firm, with how each revision went', () => {
    const a = { name: 'A. Nobody', firm: 'Yard', how: 'by e-mail' };
    const other = { ...a, firm: null, how: '2 prints' };
    expect(
      listRecipients([revision('A', a), revision('B', { ...a, how: 'by hand' }, { ...a, how: '1 print' }, other)]),
    ).toEqual([
      { name: 'A. Nobody', firm: 'Yard', how: ['by e-mail', 'by hand, 1 print'] },
      { name: 'A. Nobody', firm: null, how: [null, '2 prints'] },
    ]);
  });

  it('says of each panel what each revision did to it', () => {
    const rows = listPanelMoves([
      { marks: ['P1', 'P2'], touched: ['P1', 'P2'] },
      { marks: ['P1', 'P3'], touched: ['P3', 'P2'] },
      { marks: ['P1', 'P2', 'P3'], touched: ['P1', 'P2'] },
    ]);
    expect(rows).toEqual([
      { mark: 'P1', moves: ['new', 'same', 'changed'] },
      { mark: 'P2', moves: ['new', 'absent', 'new'] },
      { mark: 'P3', moves: ['absent', 'new', 'same'] },
    ]);
  });
});

import { listFindings } from '../../assess/set-out/list-findings.ts';
import { mayBePoured, type PourPlan } from '../../assess/set-out/plan-pour.ts';
import type { PanelSetOut } from '../../assess/set-out/set-out.ts';
import type { PourChanges } from '../../job/difference/compare-for-pour.ts';
import type { Block } from '../flow.ts';
import { type Cell, layTable, type TableColumn } from '../table.ts';
import { CAUTIONS } from './cautions.ts';
import { fitColumns } from './fit-columns.ts';
import { findPageWidth, layPages } from './lay-pages.ts';
import { type Paper, TYPE } from './paper.ts';
import { describeStatus, type Sheet, type SheetHead } from './sheet-frame.ts';
import { layGap, laySignature, layTextBlock } from './text-block.ts';

/** What the cover says beyond the plan of the pour. */
export interface CoverFacts {
  /** What changed since an earlier revision; null: none was given. */
  readonly changes: PourChanges | null;
  readonly contacts: readonly { readonly role: string; readonly name: string; readonly phone: string }[];
  /** Statements of the rules, for every sheet's reader. */
  readonly statements: readonly string[];
}

const PIECES: readonly TableColumn[] = [
  { head: 'panel', width: 10 },
  { head: 'piece', width: 7 },
  { head: 'revision', width: 9 },
  { head: 'lies with', width: 17 },
  { head: 'length × width × depth', width: 20 },
  { head: 'before the cage', width: 14 },
  { head: 'with the cage', width: 14 },
  { head: 'by others', width: 10 },
  { head: 'on the bed', width: 22 },
];

function pieceRow(plan: PourPlan, setOut: PanelSetOut, piece: PourPlan['pieces'][number]): readonly Cell[] {
  const ours = setOut.items.filter(({ item }) => item !== null);
  const count = (stage: 1 | 2) => String(ours.filter((item) => item.stage === stage).length);
  const isOld = plan.revision !== null && piece.revision !== plan.revision.letter;
  return [
    { kind: 'text', text: piece.panel, weight: 'bold' },
    piece.serial,
    { kind: 'text', text: piece.revision, weight: isOld ? 'bold' : 'plain' },
    `${setOut.faceDown.toUpperCase()} down`,
    `${setOut.form.length} × ${setOut.form.width} × ${setOut.form.depth}`,
    count(1),
    count(2),
    String(setOut.items.length - ours.length),
    piece.along_mm === null ? 'not planned' : `${piece.along_mm} from ${plan.bed.names.start}`,
  ];
}

function layFindings(plan: PourPlan, width: number): readonly Block[] {
  const heading = (words: string) =>
    layTextBlock(words, width, { size: TYPE.heading, weight: 'bold', above: 3, staysWithNext: true });
  const findings = listFindings(plan);
  if (findings.length === 0)
    return [
      heading('To settle before the pour'),
      layTextBlock('Nothing was found against this pour.', width, { size: TYPE.body }),
    ];
  return [
    heading('To settle before the pour'),
    ...findings.map(({ isStop, words }) =>
      layTextBlock(`${isStop ? 'STOP: ' : 'Look: '}${words}`, width, {
        size: TYPE.body,
        weight: isStop ? 'bold' : 'plain',
      }),
    ),
  ];
}

function layChanges({ changes }: CoverFacts, width: number): readonly Block[] {
  const heading = layTextBlock(
    changes === null ? 'What changed' : `What changed since revision ${changes.since}`,
    width,
    { size: TYPE.heading, weight: 'bold', above: 3, staysWithNext: true },
  );
  if (changes === null)
    return [heading, layTextBlock('No earlier revision was given to compare with.', width, { size: TYPE.body })];
  const lines = changes.lines.length === 0 ? ['Nothing in the panels of this pour.'] : changes.lines;
  return [heading, ...lines.map((line) => layTextBlock(line, width, { size: TYPE.body }))];
}

/** The first sheet of a folder: what is poured, whether it may be, what changed, whom to call, what hurts. */
export function drawCoverSheets(plan: PourPlan, facts: CoverFacts, head: SheetHead, paper: Paper): readonly Sheet[] {
  const width = findPageWidth(paper);
  const { pour, revision } = plan;
  const byMark = new Map(plan.setOuts.map((setOut) => [setOut.panel.mark, setOut]));
  const status = describeStatus(revision);
  const blocks: Block[] = [
    layTextBlock(
      mayBePoured(revision)
        ? `${status.words}. Each piece is cleared by its own check sheet; hold a piece that is not.`
        : `${status.words}. Only sheets "for construction" may be poured from.`,
      width,
      { size: TYPE.large, weight: 'bold', below: 2 },
    ),
    ...layTable(
      'pieces',
      fitColumns(PIECES, width),
      plan.pieces.map((piece) => pieceRow(plan, byMark.get(piece.panel)!, piece)),
    ),
    layGap(1),
  ];
  const strength =
    pour.strengthAtStrip_MPa === null
      ? 'Strength before lifting out of the form: not given; ask the design engineer.'
      : `Strength before lifting out of the form: ${pour.strengthAtStrip_MPa} MPa, shown by a test.`;
  for (const words of [strength, ...pour.remarks, ...facts.statements])
    blocks.push(layTextBlock(words, width, { size: TYPE.body }));
  blocks.push(...layFindings(plan, width), ...layChanges(facts, width));
  if (facts.contacts.length > 0) {
    blocks.push(
      layTextBlock('Whom to call', width, { size: TYPE.heading, weight: 'bold', above: 3, staysWithNext: true }),
      ...facts.contacts.map(({ role, name, phone }) =>
        layTextBlock(`${role}: ${name}, ${phone}`, width, { size: TYPE.body }),
      ),
    );
  }
  blocks.push(
    layTextBlock('Cautions', width, { size: TYPE.heading, weight: 'bold', above: 3, staysWithNext: true }),
    ...CAUTIONS.map((caution) => layTextBlock(caution, width, { size: TYPE.body })),
    layGap(2),
    laySignature('folder handed to', width, TYPE.body),
  );
  return layPages(head, blocks, paper);
}

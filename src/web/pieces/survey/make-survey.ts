import type { SurveyFile, SurveyRow } from '../../../files/survey/survey-file.ts';
import type { Panel } from '../../../job/documents/panel.ts';
import { panelSide } from '../../../job/face-frame.ts';
import type { BodyOf } from '../../../records/record.ts';
import { tellReading } from './reading-words.ts';
import { isControl, type SurveyDraft, type SurveyPair, USUAL_SIGMA } from './survey-draft.ts';
import { listCorners } from './survey-targets.ts';

type Survey = BodyOf<'surveyed'>;
type Coordinates = Survey['points'][number]['measured_mm'];

/** A point of the file with what it is. */
interface ReadPair extends SurveyPair {
  readonly row: SurveyRow;
}

/** Marks of records are no longer than that. */
const LONGEST_NAME = 60;

function nameOf({ row }: ReadPair): string {
  return (row.name ?? `line ${row.line}`).slice(0, LONGEST_NAME);
}

/** To a micrometre: what metres turned into millimetres add behind that nobody measured. */
function trim(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function measuredAt({ row: { at_mm } }: ReadPair): Coordinates {
  const [x, y, z] = at_mm.map(trim) as [number, number, number?]; // map keeps the length
  return z === undefined ? [x, y] : [x, y, z];
}

/** As many numbers as were measured. */
function asMeasured(pair: ReadPair, x: number, y: number, z: number): Coordinates {
  return pair.row.at_mm.length === 2 ? [x, y] : [x, y, z];
}

function makeControl(panel: Panel, pair: ReadPair): Survey['controls'][number] | null {
  const { meaning, sigma, isUsed, note } = pair;
  const rest = { measured_mm: measuredAt(pair), isUsed, note: note === '' ? null : note };
  if (meaning.is === 'corner') {
    const corner = listCorners(panel, pair.row.at_mm.length === 3).find(({ name }) => name === meaning.name);
    if (corner === undefined) return null;
    return {
      ...rest,
      name: `${meaning.name} (${nameOf(pair)})`.slice(0, LONGEST_NAME),
      kind: 'corner',
      design_mm: asMeasured(pair, ...corner.at),
      edgeEnd_mm: null,
      sigma_mm: sigma ?? USUAL_SIGMA.corner,
    };
  }
  if (meaning.is === 'side') {
    if (meaning.edge >= panel.outline_mm.length) return null;
    const { from, to } = panelSide(panel, meaning.edge);
    return {
      ...rest,
      name: `side ${meaning.edge + 1} (${nameOf(pair)})`.slice(0, LONGEST_NAME),
      kind: 'edge',
      design_mm: asMeasured(pair, from[0], from[1], 0),
      edgeEnd_mm: asMeasured(pair, to[0], to[1], 0),
      sigma_mm: sigma ?? USUAL_SIGMA.side,
    };
  }
  if (meaning.is !== 'mark') return null;
  return {
    ...rest,
    name: nameOf(pair),
    kind: 'mark',
    design_mm: asMeasured(pair, meaning.x, meaning.y, 0),
    edgeEnd_mm: null,
    sigma_mm: sigma ?? USUAL_SIGMA.mark,
  };
}

/** Pairs of points that the file holds. */
export function listReadPairs({ pairs }: Pick<SurveyDraft, 'pairs'>, { rows }: SurveyFile): readonly ReadPair[] {
  return pairs.flatMap((pair) => {
    const row = rows.find(({ line }) => line === pair.line);
    return row === undefined ? [] : [{ ...pair, row }];
  });
}

/** From one measured point to another [mm]. */
function apart(a: Coordinates, b: Coordinates): number {
  return Math.hypot(...a.map((value, k) => value - (b[k] ?? 0)));
}

/**
 * What a record says of a survey by instrument, by the pairs as they stand.
 * @param hash of the file's bytes
 */
export function makeSurvey(
  panel: Panel,
  draft: SurveyDraft,
  file: SurveyFile,
  hash: string,
  tool: Survey['tool'],
): Survey {
  const pairs = listReadPairs(draft, file);
  const controls = pairs.filter(isControl).flatMap((pair) => makeControl(panel, pair) ?? []);
  const points = pairs.flatMap((pair): Survey['points'][number][] => {
    const { meaning } = pair;
    if (meaning.is !== 'insert') return [];
    const rod = pairs.find((one) => one.meaning.is === 'rod' && one.meaning.key === meaning.key);
    const measured_mm = measuredAt(pair);
    const beyond = rod === undefined ? null : measuredAt(rod);
    return [
      {
        item: meaning.key,
        name: nameOf(pair),
        measured_mm,
        second: beyond === null ? null : { measured_mm: beyond, along_mm: trim(apart(measured_mm, beyond)) },
        sigma_mm: draft.instrument,
      },
    ];
  });
  return {
    basis: 'instrument',
    file:
      draft.file === null || file.reading === null
        ? null
        : { name: draft.file.name, hash, reading: tellReading(file.reading) },
    tool,
    controls,
    points,
    tapes: [],
    stances: [],
    note: draft.note === '' ? null : draft.note,
  };
}

/** What stands against recording a survey, in words; empty: nothing. */
export function listOpenOfSurvey(draft: SurveyDraft, file: SurveyFile): readonly string[] {
  const pairs = listReadPairs(draft, file);
  const taken = pairs.filter(({ meaning }) => meaning.is !== 'nothing');
  const unseen = taken.filter(({ isConfirmed }) => !isConfirmed).length;
  const points = taken.filter(({ meaning }) => meaning.is === 'insert');
  const twice = [...countBy(taken)].filter(([, count]) => count > 1).length;
  const silent = taken.filter((pair) => isControl(pair) && !pair.isUsed && pair.note.trim() === '').length;
  return [
    ...(points.length === 0 ? ['No point is an insert yet.'] : []),
    ...(unseen > 0 ? [`${unseen} ${unseen === 1 ? 'point is' : 'points are'} suggested and not confirmed.`] : []),
    ...(twice > 0 ? [`${twice} ${twice === 1 ? 'place has' : 'places have'} two points: choose one of them.`] : []),
    ...(silent > 0 ? ['A known point is left out without a reason.'] : []),
  ];
}

/** How many points each insert, rod and corner has. */
function countBy(pairs: readonly ReadPair[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { meaning } of pairs) {
    const name =
      meaning.is === 'insert' || meaning.is === 'rod'
        ? `${meaning.is} ${meaning.key}`
        : meaning.is === 'corner'
          ? meaning.name
          : null;
    if (name !== null) counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return counts;
}

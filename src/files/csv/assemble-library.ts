import { defaultRules } from '../../job/default-rules.ts';
import { defaultYard } from '../../job/default-yard.ts';
import { emptyDetails, emptyHolding } from '../../job/empty-library.ts';
import { isRecord } from '../../job/json-record.ts';
import { type Assembly, copyFromRest } from './assembly.ts';
import { catalogueSchedule } from './columns.ts';
import { type Draft, fillRecord } from './records.ts';
import { REST_FILE } from './rest.ts';
import { type Table, tableFault } from './table.ts';

/** A bar, a cross hole and the like that a row leaves wholly empty is none. */
const groupsOrNone = ['crossHole', 'qualification', 'splitting', 'crossBar', 'price'] as const;

/** Inserts from catalogue.csv and job.json. */
export function assembleItems(table: Table, { rest, sources, faults }: Assembly): Draft[] {
  return table.rows.map((row, i) => {
    const path = ['library', 'catalogue', 'items', i];
    const draft = fillRecord(catalogueSchedule, row, path, sources);
    for (const key of groupsOrNone) draft[key] ??= null;
    const foot = isRecord(draft.foot) ? draft.foot : {};
    const hasDiameter = foot.diameter_mm !== undefined;
    if (hasDiameter === (foot.area_mm2 !== undefined)) {
      const text = `${hasDiameter ? 'both foot_diameter_mm and foot_area_mm2 are' : 'neither foot_diameter_mm nor foot_area_mm2 is'} given; expected one of the two`;
      if (!row.wrong.has('foot_diameter_mm') && !row.wrong.has('foot_area_mm2')) {
        faults.push(
          tableFault(
            table.file,
            row.number,
            'foot_diameter_mm',
            String(foot.diameter_mm ?? ''),
            'one of the two',
            text,
          ),
        );
      }
      for (const key of ['kind', 'diameter_mm', 'area_mm2']) sources.silence([...path, 'foot', key]);
    }
    draft.foot = { ...foot, kind: hasDiameter ? 'diameter' : 'area' };
    const more = typeof draft.id === 'string' ? rest.types[draft.id] : undefined;
    for (const key of ['tested', 'ratedLoads'] as const)
      copyFromRest(draft, key, more?.[key], path, ['types', String(draft.id)], sources);
    return draft;
  });
}

const catalogueHead = { id: 'catalogue.csv', edition: 'as typed', name: 'Inserts typed in catalogue.csv' };

/** The pin of a library document, as far as it has one. */
export function pinOf(document: unknown): unknown {
  return isRecord(document) ? { id: document.id, edition: document.edition } : undefined;
}

/** The library documents: from job.json, or what is taken without it. */
export function assembleLibrary(items: readonly Draft[], { rest, sources, assumptions }: Assembly): Draft {
  const { library } = rest;
  for (const name of ['details', 'holding', 'rules', 'yard'] as const) {
    if (library[name] !== undefined) sources.add(['library', name], { file: REST_FILE, path: ['library', name] });
  }
  if (library.rules === undefined) {
    const { partialFactors, defaults } = defaultRules;
    assumptions.add(
      `no rules given: ${defaultRules.name}, γ_c ${partialFactors.concrete}, ${defaults.cracked ? 'cracked' : 'uncracked'} concrete, bolts of class ${defaults.boltClass}`,
    );
  }
  if (library.yard === undefined) assumptions.add(`no yard given: no beds, tapes of class ${defaultYard.tapeClass}`);
  return {
    catalogue: { format: 'onepour-catalogue', version: 1, ...(library.catalogue ?? catalogueHead), items },
    details: library.details ?? emptyDetails,
    holding: library.holding ?? emptyHolding,
    rules: library.rules ?? defaultRules,
    yard: library.yard ?? defaultYard,
  };
}

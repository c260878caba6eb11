import type { SurveyColumns } from './survey-file.ts';

/** What a heading calls a cell. */
export type HeadingRole = 'name' | 'east' | 'north' | 'x' | 'y' | 'height' | 'code';

/** Plain words of several languages, without accents, in small letters. */
const WORDS: Readonly<Record<HeadingRole, readonly string[]>> = {
  name: [
    ...[
      'point',
      'pointname',
      'pointno',
      'pointnumber',
      'pointid',
      'pt',
      'ptno',
      'name',
      'no',
      'nr',
      'num',
      'id',
      'number',
      'mark',
    ],
    ...[
      'punkt',
      'punktnr',
      'punktnummer',
      'punktname',
      'nummer',
      'bezeichnung',
      'nom',
      'numero',
      'matricule',
      'punto',
      'nombre',
    ],
    ...['nome', 'ponto', 'bod', 'cislo', 'punktnavn', 'navn', 'namn', 'piste', 'numer', 'nazwa', 'insert', 'station'],
  ],
  east: [
    'e',
    'east',
    'easting',
    'eastings',
    'ost',
    'ostwert',
    'rechts',
    'rechtswert',
    'est',
    'este',
    'leste',
    'oest',
    'ecoord',
  ],
  north: ['n', 'north', 'northing', 'northings', 'nord', 'nordwert', 'hoch', 'hochwert', 'norte', 'ncoord'],
  x: ['x', 'xcoord', 'xkoord', 'xcoordinate', 'xkoordinate', 'coordx', 'right'],
  y: ['y', 'ycoord', 'ykoord', 'ycoordinate', 'ykoordinate', 'coordy', 'up'],
  height: [
    ...[
      'h',
      'z',
      'height',
      'level',
      'elev',
      'elevation',
      'rl',
      'reducedlevel',
      'hohe',
      'hoehe',
      'altitude',
      'alt',
      'cota',
      'quota',
    ],
    ...[
      'hauteur',
      'niveau',
      'kote',
      'kota',
      'hojde',
      'hojd',
      'hoyde',
      'vyska',
      'wysokosc',
      'zcoord',
      'zcoordinate',
      'altura',
    ],
  ],
  code: [
    ...[
      'code',
      'desc',
      'description',
      'remark',
      'remarks',
      'comment',
      'note',
      'kode',
      'kod',
      'bemerkung',
      'beschreibung',
      'codigo',
    ],
    ...['codice', 'descripcion', 'descrizione', 'commentaire', 'descricao', 'layer', 'class', 'feature'],
  ],
};

const ROLES: ReadonlyMap<string, HeadingRole> = new Map(
  Object.entries(WORDS).flatMap(([role, words]) => words.map((word) => [word, role as HeadingRole])),
);

const UNIT = /[([_\s](mm|m)[)\]]?$/;

/** A word without accents, brackets, units and what is no letter. */
function bareWord(text: string): string {
  return text
    .toLowerCase()
    .trim()
    .replace(UNIT, '')
    .normalize('NFD')
    .replace(/ø/g, 'o')
    .replace(/ł/g, 'l')
    .replace(/[^a-z]/g, '');
}

/** What the cells of a heading are; null: a word that is not known. */
export function findRoles(cells: readonly string[]): readonly (HeadingRole | null)[] {
  const roles = cells.map((cell) => (cell.trim() === '#' ? 'name' : (ROLES.get(bareWord(cell)) ?? null)));
  // "N" beside an east is north; "N" without one is a number.
  const hasEast = roles.includes('east');
  return roles.map((role, i) => (role === 'north' && !hasEast && bareWord(cells[i]!) === 'n' ? 'name' : role));
}

/** The columns that a heading names; null where it does not name two that make a place. */
export function columnsOfHeading(roles: readonly (HeadingRole | null)[]): SurveyColumns | null {
  const at = (...wanted: readonly HeadingRole[]) => {
    const found = roles.findIndex((role) => role !== null && wanted.includes(role));
    return found < 0 ? null : found;
  };
  const [x, y] = roles.includes('east') ? [at('east'), at('north')] : [at('x'), at('y')];
  return x === null || y === null ? null : { name: at('name'), x, y, z: at('height'), code: at('code') };
}

/** The unit that a heading states at its coordinates: "E (m)", "x_mm". */
export function unitOfHeading(cells: readonly string[], roles: readonly (HeadingRole | null)[]): 'm' | 'mm' | null {
  for (const [i, cell] of cells.entries()) {
    const unit = UNIT.exec(cell.toLowerCase().trim())?.[1];
    const role = roles[i];
    if ((unit === 'm' || unit === 'mm') && role !== null && role !== 'name' && role !== 'code') return unit;
  }
  return null;
}

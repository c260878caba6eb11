import type { PanelSetOut, SetOutItem } from '../../assess/set-out/set-out.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';

/** Finishes as the yard says them. */
const FINISHES: Readonly<Record<CatalogueItem['finish'], string>> = {
  plain: 'plain steel',
  zinc: 'zinc plated',
  galvanised: 'galvanised',
  stainless: 'stainless',
};

/** What roles are called on sheets. Only fixings are computed here. */
const ROLES: Readonly<Record<SetOutItem['castIn']['role'], string>> = {
  fixing: 'fixing insert',
  brace: 'brace insert',
  lifting: 'lifting',
  tie: 'tie',
  duct: 'duct',
  plate: 'plate',
  other: 'other',
};

/** A type in words: `F16-103: M16 × 103, galvanised`. */
export function describeType({ item, castIn }: Pick<SetOutItem, 'item' | 'castIn'>): string {
  const role = castIn.role === 'fixing' ? '' : `${ROLES[castIn.role].toUpperCase()}: `;
  if (item === null) return `${role}${castIn.description ?? castIn.role}`;
  return `${role}${item.id}: ${item.thread} × ${item.length_mm}, ${FINISHES[item.finish]}`;
}

export function describeFinish(finish: CatalogueItem['finish']): string {
  return FINISHES[finish];
}

/** The face that an item is in, by the form and by the building: never one without the other. */
export function describeFace({ place, side, castIn }: Pick<SetOutItem, 'place' | 'side' | 'castIn'>): string {
  if (place === 'edge') return `edge at ${side}`;
  return `${place}, ${castIn.face.toUpperCase()}`;
}

/** How it is held, with the letter of its section. */
export function describeHolding({ way, castIn }: SetOutItem): string {
  if (way !== null) return way.name;
  return castIn.role === 'fixing' ? 'NOT DECIDED: ask the office' : 'by others';
}

/** The two faces as the panel lies. */
export function describeLie({ faceDown, panel, isMirrored }: PanelSetOut): readonly string[] {
  const up = faceDown === 'outside' ? 'INSIDE' : 'OUTSIDE';
  return [
    'Seen from above, as it lies in the form.',
    `${faceDown.toUpperCase()} FACE DOWN (mould face).`,
    `${up} face up (trowelled face).`,
    `The panel drawing shows the ${panel.drawnFace} face: this view ${isMirrored ? 'is its MIRROR IMAGE' : 'has the same hand'}.`,
  ];
}

/** Places in words: `x 700, y 600` or `900 along from …, 100 above the bed`. */
export function describePrinted({ printed }: Pick<SetOutItem, 'printed'>): readonly [string, string] {
  if (printed.kind === 'plan') return [String(printed.x), String(printed.y)];
  return [`${printed.along} along, from ${printed.from}`, `${printed.aboveBed} above the bed`];
}

/** A length with its sign, for a distance from a middle. */
export function writeSigned(value: number): string {
  if (value === 0) return '0';
  return value > 0 ? `+${value}` : `−${-value}`;
}

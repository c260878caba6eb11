import { GeometryError } from '../../engine/geometry/geometry-error.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { prepareRegion, type Region } from '../../engine/geometry/region.ts';
import type { Panel } from '../documents/panel.ts';
import type { DocumentFault } from '../fault.ts';
import { totalThickness } from '../section.ts';
import type { Entry, Path, SiftedJob } from '../sift.ts';
import { faultAt } from './fault-at.ts';

type Prepared = { readonly region: Region } | { readonly fault: DocumentFault };

/** Prepares an area, or says which corner is wrong. `openings` names the key beside `outline_mm`. */
export function prepareArea(
  path: Path,
  outlineKey: string,
  outline: readonly Point[],
  openings: readonly (readonly Point[])[],
): Prepared {
  try {
    return { region: prepareRegion(outline, openings) };
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error;
    const ring: Path = typeof error.ring === 'number' ? [...path, 'openings_mm', error.ring] : [...path, outlineKey];
    const corners = typeof error.ring === 'number' ? openings[error.ring]! : outline;
    const found = error.corner === null ? corners : corners[error.corner];
    return { fault: faultAt(ring, found, 'a simple polygon, openings inside and apart', error.message) };
  }
}

function checkPanel({ path, value: panel }: Entry<Panel>): DocumentFault[] {
  const faults: DocumentFault[] = [];
  const face = prepareArea(path, 'outline_mm', panel.outline_mm, panel.openings_mm);
  if ('fault' in face) faults.push(face.fault);
  const sum = totalThickness(panel.layers);
  if (panel.layers.length > 0 && Math.abs(sum - panel.thickness_mm) > 1e-6) {
    const text = `the layers add up to ${sum} mm; expected the panel's thickness of ${panel.thickness_mm} mm`;
    faults.push(faultAt([...path, 'layers'], sum, `${panel.thickness_mm} mm in all`, text));
  }
  panel.zones.forEach((zone, i) => {
    const area = prepareArea([...path, 'zones', i], 'outline_mm', zone.outline_mm, []);
    if ('fault' in area) faults.push(area.fault);
  });
  const seen = new Set<number>();
  panel.edges.forEach(({ edge }, i) => {
    const last = panel.outline_mm.length - 1;
    if (edge > last) {
      faults.push(
        faultAt(
          [...path, 'edges', i, 'edge'],
          edge,
          `0 to ${last}`,
          `panel ${panel.mark} has no edge ${edge}; expected 0 to ${last}`,
        ),
      );
    }
    if (seen.has(edge))
      faults.push(faultAt([...path, 'edges', i, 'edge'], edge, 'each edge once', `edge ${edge} is described twice`));
    seen.add(edge);
  });
  return faults;
}

/** Outlines that are no simple polygon, openings outside, layers that do not add up, edges that are not there. */
export function checkPanels(job: SiftedJob): DocumentFault[] {
  return job.panels.flatMap(checkPanel);
}

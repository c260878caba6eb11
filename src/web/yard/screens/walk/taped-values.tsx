import type { InsertReport } from '../../../../assess/yard/piece-report.ts';
import styles from './walk-screen.module.css';

/** What was taped beside what it should be: shown only once it is typed. */
export function TapedValues({ insert: { place, item } }: { readonly insert: InsertReport }) {
  const measured = (place?.latest ?? []).flatMap((record) => (record.kind === 'measured' ? [record] : []));
  if (measured.length === 0) return null;
  const should = item.taped.map(Math.round);
  return (
    <ul class={styles.values}>
      {measured.flatMap(({ id, body: { x_mm, y_mm, level_mm } }) => [
        ...(x_mm === null
          ? []
          : [
              <li key={`${id} x`}>
                {item.place === 'edge' ? 'along' : 'x'} <strong>{x_mm}</strong> mm, should be {should[0]}
              </li>,
            ]),
        ...(y_mm === null
          ? []
          : [
              <li key={`${id} y`}>
                {item.place === 'edge' ? 'above the bed' : 'y'} <strong>{y_mm}</strong> mm, should be {should[1]}
              </li>,
            ]),
        ...(level_mm === null
          ? []
          : [
              <li key={`${id} level`}>
                <strong>{Math.abs(level_mm)}</strong> mm {level_mm < 0 ? 'ABOVE' : 'below'} the face
              </li>,
            ]),
      ])}
    </ul>
  );
}

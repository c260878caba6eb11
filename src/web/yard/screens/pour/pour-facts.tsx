import type { PieceHead } from '../../../../assess/yard/piece-head.ts';
import { useYard } from '../../../pieces/yard.ts';
import styles from './pour-screen.module.css';

/** What everybody at the form must know: revision, concrete, strength to strip at, whom to call. */
export function PourFacts({ pour, pieces }: { readonly pour: string | null; readonly pieces: readonly PieceHead[] }) {
  const context = useYard().context.value;
  if (context === null) return null;
  const { index, revision } = context;
  const { file } = index;
  const planned = file.job.pours.find(({ id }) => id === pour);
  const mixes = [
    ...new Set(
      pieces.flatMap(({ mark }) => {
        const id = index.panels.get(mark)?.concrete;
        const mix = id === undefined ? undefined : index.concretes.get(id);
        return mix === undefined ? [] : [`${mix.name ?? mix.id} (${mix.strength28_MPa} MPa at 28 days)`];
      }),
    ),
  ];
  const other = planned?.pieces.filter((piece) => piece.revision !== null && piece.revision !== revision.letter) ?? [];
  return (
    <section class={styles.facts}>
      <dl>
        <div>
          <dt>by revision</dt>
          <dd>
            <strong>{revision.letter}</strong>, {file.job.revision?.status ?? 'for construction'}
          </dd>
        </div>
        <div>
          <dt>concrete</dt>
          <dd>{mixes.join('; ') || 'not known'}</dd>
        </div>
        <div>
          <dt>strip at</dt>
          <dd>
            {planned?.strengthAtStrip_MPa == null
              ? 'not given: ask the lifting designer'
              : `${planned.strengthAtStrip_MPa} MPa at least, as the lifting design says`}
          </dd>
        </div>
        {file.library.yard.contacts.length > 0 && (
          <div>
            <dt>call</dt>
            <dd>
              {file.library.yard.contacts.map(({ role, name, phone }) => (
                <span key={`${role} ${name}`} class={styles.contact}>
                  {role}: {name} <strong>{phone}</strong>
                </span>
              ))}
            </dd>
          </div>
        )}
      </dl>
      {other.length > 0 && (
        <p class={styles.mixed}>
          Planned by another revision:{' '}
          {other.map(({ panel, serial, revision: by }) => `${panel} no. ${serial} (${by})`).join(', ')}. The work goes
          by {revision.letter}.
        </p>
      )}
      {(planned?.remarks ?? []).map((remark) => (
        <p key={remark}>{remark}</p>
      ))}
    </section>
  );
}

import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { NewerPage } from '../../parts/newer-page.tsx';

/** What a person must know of this device: each with what to do. */
export function Problems() {
  const { device } = useYard();
  const { problem } = device.sync.value;
  const asides = device.job.value?.asides ?? [];
  const forks = device.job.value?.forks ?? [];
  return (
    <>
      <NewerPage />
      {problem !== null && (
        <Answer kind="wrong" words={problem}>
          <div>
            <BigKey kind="quiet" onPress={() => void device.heedProblem()}>
              I have read it
            </BigKey>
          </div>
        </Answer>
      )}
      {asides.length > 0 && (
        <Answer
          kind="unsure"
          words={`The server keeps ${asides.length === 1 ? '1 record' : `${asides.length} records`} apart: not counted, not lost`}
        >
          <ul>
            {asides.slice(0, 10).map(({ at, why, id }) => (
              <li key={`${id} ${at}`}>
                {new Date(at).toLocaleString('en-GB', { dateStyle: 'short', timeStyle: 'short' })}: {why}
              </li>
            ))}
            {asides.length > 10 && <li>and {asides.length - 10} more, in the office</li>}
          </ul>
        </Answer>
      )}
      {forks.length > 0 && (
        <Answer
          kind="unsure"
          words={forks.length === 1 ? 'A device was copied or put back' : 'Devices were copied or put back'}
        >
          <p>
            Two records came under one running number from{' '}
            {forks.map(({ device: id, number }) => `${id} (no. ${number})`).join(', ')}. Both are kept; each goes on
            under a name of its own.
          </p>
        </Answer>
      )}
    </>
  );
}

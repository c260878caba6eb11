import { newVersion, takeNewVersion } from '../../parts/register-service-worker.ts';
import { Answer } from './answer.tsx';
import { BigKey } from './big-key.tsx';

/** A newer version of this page is on the device: taken by a tap, never by itself. Nothing where there is none. */
export function NewerPage() {
  if (newVersion.value === null) return null;
  return (
    <Answer kind="unsure" isSmall words="A newer version of this page is ready">
      <p>What is written down stays, sent or not. Take it between two checks.</p>
      <div>
        <BigKey kind="quiet" onPress={takeNewVersion}>
          Take the newer version
        </BigKey>
      </div>
    </Answer>
  );
}

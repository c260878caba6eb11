import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Yard, YardPlace } from '../../pieces/yard.ts';
import { openDevice } from '../../records/open-device.ts';
import { Answer } from '../parts/answer.tsx';
import styles from './yard-shell.module.css';

/** Opens what is on this device; everything else lies in it. */
export function YardShell({ children }: { readonly children: ComponentChildren }) {
  const [yard, setYard] = useState<Yard | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    openDevice().then(
      (device) => setYard(new Yard(device)),
      (error: unknown) => setFault(error instanceof Error ? error.message : String(error)),
    );
  }, []);
  if (fault !== null)
    return (
      <main class={styles.alone}>
        <h1>Onepour yard</h1>
        <Answer kind="wrong" words="Nothing can be written down on this device">
          <p>
            This browser gives no place to keep records ({fault}). A private window never does: open an ordinary one.
            Until then check on paper sheets; they can be typed in later.
          </p>
        </Answer>
      </main>
    );
  if (yard === null) return <p aria-busy="true">Opening …</p>;
  return <YardPlace.Provider value={yard}>{children}</YardPlace.Provider>;
}

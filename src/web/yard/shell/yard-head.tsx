import { Link } from 'wouter-preact';
import { places } from '../../pieces/places.ts';
import { useYard } from '../../pieces/yard.ts';
import { light } from '../state/light.ts';
import { nameRoles } from '../state/name-roles.ts';
import { SyncChip } from './sync-chip.tsx';
import styles from './yard-head.module.css';

export interface FrameHead {
  /** What the screen is about, and the title of the page. */
  readonly title: string;
  /** Of a screen about a piece. */
  readonly piece?: { readonly mark: string; readonly serial: string; readonly letter: string; readonly phase: string };
  /** What is being done: `before the cage`. */
  readonly stage?: string;
  /** Where "back" leads; null: nowhere. */
  readonly back: string | null;
  /** Leaves a part of a screen that has no address of its own: `back` may be where one is. */
  readonly onBack?: () => void;
}

/** Signs of a mark beyond which it is written smaller, on two lines: mark and number are never cut. */
const LONG_MARK = 12;

const NEXT = { shed: 'sun', sun: 'night', night: 'shed' } as const;

function LightKey() {
  return (
    <button type="button" class={styles.small} onClick={() => (light.value = NEXT[light.value])}>
      <small>light</small> {light.value}
      <span class="aloud">, change to {NEXT[light.value]}</span>
    </button>
  );
}

/** The head of a sheet: which piece, by which revision, in which stage; who works; where the records are. */
export function YardHead({ title, piece, stage, back, onBack }: FrameHead) {
  const { device } = useYard();
  const person = device.person.value;
  document.title = `${title} · Onepour yard`;
  return (
    <header class={styles.head}>
      {back !== null && (
        <Link href={back} class={styles.back} aria-label="Back" onClick={onBack}>
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <path d="M15 4l-8 8 8 8" />
          </svg>
        </Link>
      )}
      <div class={styles.what}>
        {piece === undefined ? (
          <h1 class={styles.title}>{title}</h1>
        ) : (
          <h1 class={`${styles.mark} ${piece.mark.length > LONG_MARK ? styles.long : ''}`}>
            {piece.mark} <span>no. {piece.serial}</span>
          </h1>
        )}
        {stage !== undefined && <p class={styles.stage}>{stage}</p>}
      </div>
      {piece !== undefined && (
        <p class={styles.revision}>
          <small>rev.</small>
          {piece.letter}
        </p>
      )}
      <div class={styles.end}>
        {person !== null && (
          <Link href={places.device()} class={styles.small}>
            <small class={styles.name}>{nameRoles(person.roles)}</small>
            <span class={styles.name}>{person.name ?? 'name erased'}</span>
          </Link>
        )}
        <SyncChip />
        <LightKey />
      </div>
    </header>
  );
}

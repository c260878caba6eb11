import type { SetOutItem } from '../../../assess/set-out/set-out.ts';
import styles from './lifting-word.module.css';

/** What hangs on which role: in words, so that nobody takes one for another. */
const WORDS: Readonly<Record<SetOutItem['castIn']['role'], string>> = {
  fixing: 'NOT FOR LIFTING',
  brace: 'BRACE INSERT · NOT FOR LIFTING',
  lifting: 'LIFTING · nothing else hangs on it',
  tie: 'TIE · NOT FOR LIFTING',
  duct: 'DUCT · NOT FOR LIFTING',
  plate: 'PLATE · NOT FOR LIFTING',
  other: 'NOT FOR LIFTING',
};

/** Whether something may be lifted by, beside its picture. The catalogue rates no fixing insert for lifting. */
export function LiftingWord({ role }: { readonly role: SetOutItem['castIn']['role'] }) {
  return (
    <strong class={`${styles.word} ${role === 'lifting' ? styles.lifting : ''}`}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d={role === 'lifting' ? 'M3 20L12 4l9 16zM4 2h16' : 'M12 3v9a4 4 0 1 1-4 4M3 3l18 18'} />
      </svg>
      {WORDS[role]}
    </strong>
  );
}

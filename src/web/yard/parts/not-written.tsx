import { Answer } from './answer.tsx';

/** Why the last entry is not written down; nothing where it is. */
export function NotWritten({ fault }: { readonly fault: string | null }) {
  return fault === null ? null : (
    <Answer kind="wrong" words="Not written down">
      <p>{fault} What you entered is still here; try again.</p>
    </Answer>
  );
}

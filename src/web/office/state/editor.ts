import { drawUuid } from '../../parts/draw-uuid.ts';

/** Every open page is an editor of its own; its name lasts as long as its tab, reloads included. */
const KEPT = 'onepour-editor';
const lockOf = (editor: string) => `onepour-editor-${editor}`;
/** A page that is loaded anew waits so long for itself as it was before to be gone [ms]. */
const PATIENCE = 600;

/** Browsers give locks to pages of this machine and of secure addresses only. */
const locks = (): LockManager | undefined => navigator.locks;

/** Holds a name's lock until the page goes; false where another page has it. Without locks a name is taken to be free. */
async function hold(editor: string): Promise<boolean> {
  const manager = locks();
  if (manager === undefined) return true;
  return new Promise((resolve) => {
    const held = manager.request(lockOf(editor), { signal: AbortSignal.timeout(PATIENCE) }, () => {
      resolve(true);
      return new Promise<never>(() => {});
    });
    held.catch(() => resolve(false));
  });
}

/** What the tab remembers; null where it remembers nothing or may not. */
function readKept(): string | null {
  try {
    return sessionStorage.getItem(KEPT);
  } catch {
    return null;
  }
}

function keep(editor: string): void {
  try {
    sessionStorage.setItem(KEPT, editor);
  } catch {
    // The page gets another name when it is loaded anew; its edits are found as those of a page that was closed.
  }
}

async function findName(): Promise<string> {
  const kept = readKept();
  if (kept !== null && (await hold(kept))) return kept;
  const editor = drawUuid();
  keep(editor);
  await hold(editor);
  return editor;
}

/** Found once: a page that asks again would find its own lock taken. */
const own: { editor?: Promise<string> } = {};

/** This page's name. A tab that was duplicated brings a name that is in use: it gets another. */
export function takeEditor(): Promise<string> {
  own.editor ??= findName();
  return own.editor;
}

/** Names that open pages of this browser have. */
export async function listEditors(): Promise<ReadonlySet<string>> {
  const { held = [] } = (await locks()?.query()) ?? {};
  return new Set(held.map(({ name = '' }) => name.replace(lockOf(''), '')));
}

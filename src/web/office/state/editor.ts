/** Every open page is an editor of its own; its name lasts as long as its tab, reloads included. */
const KEPT = 'onepour-editor';
const lockOf = (editor: string) => `onepour-editor-${editor}`;

/** Holds a name's lock until the page goes; false where another page has it. */
function hold(editor: string): Promise<boolean> {
  return new Promise((resolve) => {
    void navigator.locks.request(lockOf(editor), { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      return lock === null ? undefined : new Promise<never>(() => {});
    });
  });
}

async function findName(): Promise<string> {
  const kept = sessionStorage.getItem(KEPT);
  if (kept !== null && (await hold(kept))) return kept;
  const editor = crypto.randomUUID();
  sessionStorage.setItem(KEPT, editor);
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
  const { held = [] } = await navigator.locks.query();
  return new Set(held.map(({ name = '' }) => name.replace(lockOf(''), '')));
}

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Edit } from '../../src/job/edit/edit.ts';
import { turnBack } from '../../src/job/edit/edit-job.ts';
import { History, redoId, undoId } from '../../src/web/office/state/history.ts';

function makeEdit(n: number): Edit {
  const patch = (value: number) => [{ op: 'replace' as const, path: ['job', 'n'], value }];
  return {
    id: crypto.randomUUID(),
    label: `edit ${n}`,
    at: '2026-01-01T00:00:00.000Z',
    changes: patch(n),
    back: patch(n - 1),
  };
}

/** Does what a person does, and keeps the list of edits as the server stores it. */
function play(steps: readonly ('edit' | 'undo' | 'redo')[]) {
  const history = new History();
  const list: Edit[] = [];
  const add = (edit: Edit) => {
    history.add(edit);
    list.push(edit);
  };
  for (const [k, step] of steps.entries()) {
    const { done, undone } = history.stacks.value;
    const [last, next] = [done.at(-1), undone.at(-1)];
    const stamp = (id: string) => ({ id, at: '2026-01-01T00:00:00.000Z' });
    if (step === 'edit') add(makeEdit(k));
    else if (step === 'undo' && last !== undefined) add(turnBack(last, 'back', stamp(undoId(last))));
    else if (step === 'redo' && next !== undefined) add(turnBack(next, 'again', stamp(redoId(next))));
  }
  return { history, list };
}

const steps = fc.array(fc.constantFrom('edit' as const, 'undo' as const, 'redo' as const), { maxLength: 40 });

test('what can be undone and redone is found again from the list of edits alone', () => {
  fc.assert(
    fc.property(steps, (what) => {
      const { history, list } = play(what);
      const loaded = new History();
      loaded.load(list);
      expect(loaded.stacks.value).toEqual(history.stacks.value);
    }),
  );
});

test('undoing everything and redoing it gives every edit once, in its order', () => {
  const { history } = play(['edit', 'edit', 'edit', 'undo', 'undo', 'undo', 'redo', 'redo', 'redo', 'undo', 'redo']);
  const values = history.stacks.value.done.map(({ changes }) => changes[0]?.value);
  expect(values).toEqual([0, 1, 2]);
  expect(history.stacks.value.undone).toEqual([]);
});

test('a list that begins after the edit that is taken back loses nothing of what came later', () => {
  const { list } = play(['edit', 'edit', 'undo', 'edit']);
  const loaded = new History();
  loaded.load(list.slice(2));
  expect(loaded.stacks.value.done.map(({ id }) => id)).toEqual(list.slice(2).map(({ id }) => id));
});

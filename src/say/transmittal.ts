/** An issued revision as a transmittal names it. */
export interface TransmittedRevision {
  readonly letter: string;
  readonly status: string;
  readonly date: string;
  readonly fingerprint: string;
  readonly recipients: readonly { readonly name: string; readonly firm: string | null; readonly how: string }[];
}

/** One recipient, with how each revision went to them; null: it did not. */
export interface RecipientRow {
  readonly name: string;
  readonly firm: string | null;
  readonly how: readonly (string | null)[];
}

/** What a revision did to a panel; `absent`: it is not in that revision. */
export type PanelMove = 'new' | 'changed' | 'same' | 'absent';

export interface PanelRow {
  readonly mark: string;
  readonly moves: readonly PanelMove[];
}

/** Everybody who was ever handed a revision, in the order in which they came in. */
export function listRecipients(revisions: readonly TransmittedRevision[]): readonly RecipientRow[] {
  const rows = new Map<string, { name: string; firm: string | null; how: (string | null)[] }>();
  revisions.forEach(({ recipients }, k) => {
    for (const { name, firm, how } of recipients) {
      const id = JSON.stringify([name, firm]);
      const row = rows.get(id) ?? { name, firm, how: revisions.map(() => null) };
      const before = row.how[k];
      row.how[k] = before === null || before === undefined ? how : `${before}, ${how}`;
      rows.set(id, row);
    }
  });
  return [...rows.values()];
}

/**
 * Every panel that a revision has or had, with what each revision did to it.
 * @param revisions in the order of issue, each with its panels and those that are new or another than in the one before
 */
export function listPanelMoves(
  revisions: readonly { readonly marks: readonly string[]; readonly touched: readonly string[] }[],
): readonly PanelRow[] {
  const marks = [...new Set(revisions.flatMap((one) => one.marks))];
  return marks.map((mark) => ({
    mark,
    moves: revisions.map(({ marks: present, touched }, k): PanelMove => {
      if (!present.includes(mark)) return 'absent';
      if (revisions[k - 1]?.marks.includes(mark) !== true) return 'new';
      return touched.includes(mark) ? 'changed' : 'same';
    }),
  }));
}

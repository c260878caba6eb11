import type { CodeJudgement, VoidReason } from './judge-code.ts';

type VoidSheet = Extract<CodeJudgement, { readonly kind: 'void' }>;

/** What is shouted about a sheet that nothing may be done by. */
export interface VoidWords {
  /** Which sheet it is. */
  readonly sheet: string;
  readonly why: string;
  /** What is in force. */
  readonly now: string;
  /** What to do with the sheet. */
  readonly next: string;
}

function sayDay(moment: string): string {
  return new Date(moment).toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
}

function sayWhy(reason: VoidReason): string {
  switch (reason.why) {
    case 'older':
      return `It was issued on ${sayDay(reason.issuedAt)} and does not hold any more.`;
    case 'not for construction':
      return `It was issued on ${sayDay(reason.issuedAt)} as “${reason.status}”. Nothing is poured by it.`;
    case 'never issued':
      return 'It was printed from a state of the job that nobody issued, or that this device has not heard of yet.';
    case 'other project':
      return reason.here === null
        ? `It is of project ${reason.project}.`
        : `It is of project ${reason.project}. This device works on ${reason.here}.`;
  }
}

/** The words of the shout. */
export function sayVoid({ reason, sheetLetter, inForce, mark, serial }: VoidSheet): VoidWords {
  return {
    sheet: `Sheet of ${mark}${serial === null ? '' : ` no. ${serial}`}: revision ${sheetLetter}`,
    why: sayWhy(reason),
    now: inForce === null ? 'Nothing is in force: nothing may be poured.' : `In force: revision ${inForce}`,
    next:
      reason.why === 'other project'
        ? 'Take it off the form. Ask where it belongs.'
        : 'Take it off the form and tear it up. Get the sheet in force.',
  };
}

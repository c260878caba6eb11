import type { CaseField, KnownField } from '../../../assess/out-of-place/case.ts';

/** The id of a value's field on the page. */
export function idOf(field: CaseField | KnownField): string {
  return `field-${field}`;
}

/** Brings a field into sight, opening what it is folded away in, and puts the cursor into it. */
export function goToField(field: CaseField | KnownField): void {
  const input = document.getElementById(idOf(field));
  if (input === null) return;
  const folded = input.closest('details');
  if (folded !== null) folded.open = true;
  input.scrollIntoView({ block: 'center' });
  input.focus({ preventScroll: true });
}

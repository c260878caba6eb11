/** How long the browser may take to fetch what was handed to it [ms]. */
const FETCH_MS = 60_000;

/**
 * Gives a file to the person.
 * @param type such as `application/json`; texts are written as UTF-8
 */
export function download(name: string, content: string | Uint8Array<ArrayBuffer>, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), FETCH_MS);
}

/** A text as part of a file's name: letters, digits, `-` and `_` stay. `2631 Harbour/East` → `2631-Harbour-East`. */
export function fileNameOf(text: string): string {
  return text.replace(/[^\p{L}\p{N}_-]+/gu, '-').replace(/^-+|-+$/g, '') || 'job';
}

import { fileURLToPath } from 'node:url';

/** A file of the package. The demo and the built screens stand beside dist/, where the command is bundled to. */
export function fromRoot(path: string): string {
  return fileURLToPath(new URL(`../${path}`, import.meta.url));
}

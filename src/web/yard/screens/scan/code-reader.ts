import type { CodeReader } from './read-picture.ts';

/**
 * The reader of codes in pixels: a script of its own, kept on the device with the others, brought in when somebody scans. It reads dark on light
 * only: sheets are printed so.
 */
export async function loadCodeReader(): Promise<CodeReader> {
  const { default: readCode } = await import('jsqr');
  return ({ data, width, height }) => {
    const found = readCode(data, width, height, { inversionAttempts: 'dontInvert' });
    return found === null || found.data === '' ? null : found.data;
  };
}

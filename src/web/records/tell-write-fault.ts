/** What a failed write comes to, for the person who wrote. Errors that are words already are given as they are. */
export function tellWriteFault(error: unknown): Error {
  const name = error instanceof DOMException ? error.name : null;
  if (name === 'QuotaExceededError')
    return new Error(
      'There is no room left on this device: nothing was written down. Send what waits, or save it to a file; then make room.',
    );
  if (name === 'VersionError' || name === 'InvalidStateError')
    return new Error('A newer version of this page is open: nothing was written down. Load this page anew.');
  if (name !== null)
    return new Error(`This device did not take it: nothing was written down (${name}: ${String(error)}).`);
  return error instanceof Error ? error : new Error(String(error));
}

/** What became of a text that was to be sent. */
export type Shared = 'sent' | 'copied' | 'not sent' | 'shown';

/** Hands a text to the device's own way of sending; else copies it; where neither is allowed it is to be shown. */
export async function shareText(text: string): Promise<Shared> {
  if (typeof navigator.share === 'function') {
    try {
      await navigator.share({ title: 'Insert out of place', text });
      return 'sent';
    } catch (error) {
      // The person thought better of it.
      if (error instanceof DOMException && error.name === 'AbortError') return 'not sent';
    }
  }
  try {
    await navigator.clipboard.writeText(text);
    return 'copied';
  } catch {
    return 'shown';
  }
}

import type { RoundResult } from './sync/sync-round.ts';

/** What one page of this browser tells the others. */
export type PageNews =
  | { readonly kind: 'pieces'; readonly job: string; readonly pieces: readonly string[] }
  /** Person, job, id, or what is unsent. */
  | { readonly kind: 'device' }
  | { readonly kind: 'round'; readonly result: RoundResult };

/** Tells other pages of this browser what was written and what arrived. */
export class PageChannel {
  readonly #channel = new BroadcastChannel('onepour-yard');

  /** @param onNews of others, never of this page */
  constructor(onNews: (news: PageNews) => void) {
    // Only pages of this site post here, and only by `tell`.
    this.#channel.onmessage = ({ data }: MessageEvent<PageNews>) => onNews(data);
  }

  tell(news: PageNews): void {
    this.#channel.postMessage(news);
  }
}

/** What pages say to the service worker. */

/** The page is there: now what it may need later. */
export const KEEP_REST = 'keep the rest';

/** To one that waits: a person wants the newer page. */
export const TAKE_OVER = 'take over';

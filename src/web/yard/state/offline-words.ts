/** What the browser says of itself. */
export interface OfflineFacts {
  /** The page came over HTTPS, or from this machine. */
  readonly isSecure: boolean;
  readonly hasServiceWorker: boolean;
  /** The screens are kept by the service worker. */
  readonly isKeptReady: boolean;
  /** The browser promised not to clear the records away; null: not asked yet. */
  readonly isStoreKept: boolean | null;
}

export interface OfflineWords {
  readonly kind: 'good' | 'unsure' | 'wrong';
  readonly words: string;
  readonly more: string;
}

/** Whether one can go on without the network, in plain words, and what to do where one cannot. */
export function tellOffline({ isSecure, hasServiceWorker, isKeptReady, isStoreKept }: OfflineFacts): OfflineWords {
  if (!isSecure)
    return {
      kind: 'wrong',
      words: 'Without the network it does NOT open here',
      more: 'This address is not secure (http, not https), so the browser keeps no screens. What you write down stays on this device until it is sent, but do not close or reload the page in the shed. Ask the office for the https address, or take paper sheets along.',
    };
  if (!hasServiceWorker)
    return {
      kind: 'wrong',
      words: 'Without the network it does NOT open here',
      more: 'This browser keeps no screens: a private window, or a browser that is set so. Open an ordinary window, or take paper sheets along.',
    };
  if (!isKeptReady)
    return {
      kind: 'unsure',
      words: 'Not ready to go offline yet',
      more: 'The screens are being kept on this device. Stay where the network is until this line is green.',
    };
  if (isStoreKept === false)
    return {
      kind: 'unsure',
      words: 'It works without the network, but the browser may clear it',
      more: 'The browser has not promised to keep the records when the device gets full. Send them before the tablet is put away; putting the page on the home screen usually helps.',
    };
  return {
    kind: 'good',
    words: 'Works without the network',
    more: 'Screens, drawings and records are on this device. Records go to the server by themselves when it is there.',
  };
}

/** The state of the concrete in a word. */
export function nameState(isCracked: boolean): string {
  return isCracked ? 'cracked' : 'uncracked';
}

import { tell } from '../../../state/messages.ts';

/** Tells why something was not done, where no field can show it. */
export function say(why: string | null): void {
  if (why !== null) tell('fault', why);
}

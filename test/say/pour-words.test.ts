import { expect, it } from 'vitest';
import { tellReadiness } from '../../src/say/pour-words.ts';

const stop = { isStop: true, words: 'the body of no. 7 meets a bar' };
const look = { isStop: false, words: 'P01: 2 to look at' };
const fails = { state: 'fails', text: '1 fails: C31' } as const;
const unchecked = { state: 'strength not checked', text: '1 strength not checked: C60' } as const;

it('calls a pour ready only where nothing stands against it and every connection passes', () => {
  expect(tellReadiness([], [], 0)).toEqual({ state: 'passes', words: 'ready' });
  expect(tellReadiness([look], [], 0)).toEqual({ state: 'passes', words: 'ready, 1 to look at' });
  expect(tellReadiness([look], [], 3).state).toBe('computing');
  expect(tellReadiness([look], [fails, unchecked], 3)).toEqual({ state: 'fails', words: 'not ready, 1 fails: C31' });
  expect(tellReadiness([], [unchecked], 0)).toEqual({
    state: 'strength not checked',
    words: 'not ready, 1 strength not checked: C60',
  });
  expect(tellReadiness([stop, look], [unchecked], 0)).toEqual({ state: 'fails', words: 'not ready: 1 stop' });
});

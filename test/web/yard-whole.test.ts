import { it } from 'vitest';
import { IS_LONG } from '../long.ts';
import { useOffice } from './harness.ts';
import { checkPourOffline } from './yard/story.ts';
import { bringTogether } from './yard/together.ts';

const office = useOffice({ hasDemo: false });

it('a pour of eight, checked offline on two tablets, is the same everywhere once both are back', async () => {
  const { cut, again } = await checkPourOffline(office);
  await bringTogether(office, cut, 'one');
  // The other order, from the same tablets: with the long tests. That no order matters is held without a browser too.
  if (IS_LONG) await bringTogether(office, await again(), 'two');
}, 300_000);

import { it } from 'vitest';
import { useOffice } from './harness.ts';
import { checkPourOffline } from './yard/story.ts';
import { bringTogether } from './yard/together.ts';

const office = useOffice({ hasDemo: false });

it('a pour of eight, checked offline on two tablets, is the same everywhere whichever of them comes back first', async () => {
  const { cut, again } = await checkPourOffline(office);
  await bringTogether(office, cut, 'one');
  await bringTogether(office, await again(), 'two');
}, 300_000);

import { it } from 'vitest';
import { useOffice } from './harness.ts';
import { checkPourOffline } from './yard/story.ts';
import { bringTogether } from './yard/together.ts';

const office = useOffice({ hasDemo: false });

it('a pour of eight, checked offline on two tablets, is the same everywhere when the first comes back before the other', async () => {
  await bringTogether(office, await checkPourOffline(office), 'one');
}, 180_000);

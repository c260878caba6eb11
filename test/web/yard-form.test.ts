import { describe, it } from 'vitest';
import { checkForm, Finger } from './harness/finger.ts';
import { checkTargets, checkWidth, findYardPiece, openYard } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

describe('the form itself', () => {
  it('is named as racked, and keeps what was typed over a reload', async () => {
    const { id, plan } = await findYardPiece(office, 'P13');
    const screen = await openYard(office, `/yard/piece/${id}/form`, { hold: 'portrait' });
    const { page } = screen;
    const finger = new Finger(page);
    await finger.type('length', plan.setOut.form.length);
    await page.getByRole('region', { name: 'width', exact: true }).waitFor();
    await screen.shoot('portrait-form');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    await page.reload();
    await page.getByRole('region', { name: 'width', exact: true }).waitFor();
    await finger.tap(/^Undo/);
    const [a] = plan.setOut.form.diagonals;
    await checkForm(finger, plan, { [`${a!.from} to ${a!.to}`]: a!.length + 15 });
    await page.getByText('The form is out').waitFor();
    await checkTargets(page);
    await page
      .getByText(/racked/)
      .first()
      .waitFor();
    await screen.shoot('portrait-form-racked');
    // The check itself is taken back by one key, too.
    await finger.tap(/^Undo/);
    await page.getByText('Not checked yet').waitFor();
  }, 90_000);
});

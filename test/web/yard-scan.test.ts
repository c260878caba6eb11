import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type PieceCode, writePieceCode } from '../../src/job/piece-code.ts';
import { nameProject } from '../../src/web/yard/screens/scan/judge-code.ts';
import type { YardJob } from '../../src/wire/records.ts';
import { bringIn } from './harness/bring-in.ts';
import { launchChromium } from './harness/chromium.ts';
import { drawSheet, writePng, writeVideo } from './harness/pictures.ts';
import { Screen } from './harness/screen.ts';
import { checkTargets, checkWidth, findYardPiece, openYard, readYardJob, setLight, TABLET } from './harness/yard.ts';
import { type Office, useOffice } from './harness.ts';

const office = useOffice();

/** The code of a sheet of the demo, printed from the revision in force. */
async function makeCode(changes: Partial<PieceCode> = {}): Promise<string> {
  const { job, file } = await readYardJob(office);
  const yard = (await (await fetch(`${office.server.address}/api/jobs/${job}/yard`)).json()) as YardJob;
  const { letter, fingerprint } = yard.inForce!;
  return writePieceCode({
    project: nameProject(file.job),
    mark: 'P13',
    serial: '1',
    letter,
    fingerprint: fingerprint.slice(0, 12),
    ...changes,
  });
}

/** The code of a sheet of revision A, which was for approval only. */
async function makeOldCode(): Promise<string> {
  const { job } = await readYardJob(office);
  const yard = (await (await fetch(`${office.server.address}/api/jobs/${job}/yard`)).json()) as YardJob;
  const old = yard.revisions.find(({ letter }) => letter === 'A')!;
  return makeCode({ letter: 'A', fingerprint: old.fingerprint.slice(0, 12) });
}

/** A tablet whose camera sees a sheet with that code. */
async function withCamera(text: string, use: (screen: Screen) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'onepour-camera-'));
  const video = join(folder, 'sheet.y4m');
  writeFileSync(video, writeVideo(drawSheet(text, { width: 640, height: 480 }, [150, 70], 6)));
  const browser = await launchChromium([
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${video}`,
  ]);
  try {
    const own: Office = {
      server: office.server,
      browser,
      open: (path, options) => Screen.open(browser, office.server.address, path, options),
      openBeside: (screen, path) => screen.openBeside(path),
    };
    const screen = await openYard(own, '/yard/scan');
    await use(screen);
    await screen.context.close();
    screen.faults.checkNone();
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

describe('the camera', () => {
  it('opens the piece of the sheet that it sees', async () => {
    const { id } = await findYardPiece(office, 'P13');
    await withCamera(await makeCode(), async ({ page }) => {
      await page.waitForURL(new RegExp(`/yard/piece/${id}$`));
      await page.getByRole('heading', { name: 'P13 no. 1' }).waitFor();
    });
  }, 90_000);

  it('shouts at a void sheet, until somebody leaves on purpose', async () => {
    const { id } = await findYardPiece(office, 'P13');
    await withCamera(await makeOldCode(), async (screen) => {
      const { page } = screen;
      const shout = page.getByRole('alertdialog', { name: /VOID/ });
      await shout.waitFor();
      const text = (await shout.textContent()) ?? '';
      expect(text).toContain('revision A');
      expect(text).toContain('In force: revision B');
      expect(text).toContain('for approval');
      const box = (await shout.boundingBox())!;
      expect([box.x, box.y, box.width, box.height]).toEqual([0, 0, 1180, 820]);
      await screen.shoot('void');
      await checkTargets(page);
      await checkWidth(page);
      await screen.checkAccess();
      await page.keyboard.press('Escape');
      // Browsers close what stands over a page at a second one without asking.
      await page.keyboard.press('Escape');
      await page.waitForTimeout(300);
      expect(await shout.isVisible()).toBe(true);
      await page.setViewportSize(TABLET.portrait);
      await screen.shoot('void-portrait');
      await page.getByRole('button', { name: /^Go to the piece by the revision in force/ }).tap();
      await page.waitForURL(new RegExp(`/yard/piece/${id}$`));
    });
  }, 90_000);

  it('lets the piece be chosen where the sheet is for every piece of its mark', async () => {
    await withCamera(await makeCode({ mark: 'P12', serial: null }), async (screen) => {
      const { page } = screen;
      await page.getByRole('heading', { name: /^Which P12\?/ }).waitFor();
      await screen.shoot('scan-serials');
      await checkTargets(page);
      await page.getByRole('button', { name: /^no. 2/ }).tap();
      await page.getByRole('heading', { name: 'P12 no. 2' }).waitFor();
    });
  }, 90_000);
});

describe('without a camera', () => {
  it('says so, and opens the piece by its mark', async () => {
    const screen = await openYard(office, '/yard/scan');
    const { page } = screen;
    await page.getByRole('alert').filter({ hasText: 'camera' }).waitFor();
    await screen.shoot('scan-no-camera');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    await setLight(page, 'sun');
    await screen.shoot('scan-sun');
    await page.getByRole('button', { name: 'Name the piece by its mark' }).tap();
    await screen.shoot('scan-marks');
    await checkTargets(page);
    while ((await page.getByRole('button', { name: 'P12', exact: true }).count()) === 0)
      await page.getByRole('button', { name: /^P1 …/ }).tap();
    await page.getByRole('button', { name: 'P12', exact: true }).tap();
    await page.getByRole('button', { name: /^no. 1/ }).tap();
    await page.getByRole('heading', { name: 'P12 no. 1' }).waitFor();
  });

  it('reads a small code off a photograph of a large sheet, and shouts without any connection', async () => {
    const screen = await openYard(office, '/yard/scan');
    const { page, context } = screen;
    // All that is needed later is kept on the device.
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    await page.reload();
    await page.getByRole('button', { name: 'Name the piece by its mark' }).waitFor();
    await context.setOffline(true);
    const sheet = drawSheet(await makeOldCode(), { width: 3200, height: 2260 }, [2760, 1700], 5);
    await page
      .locator('input[type="file"]')
      .setInputFiles({ name: 'sheet.png', mimeType: 'image/png', buffer: writePng(sheet) });
    await page.getByRole('alertdialog', { name: /VOID/ }).waitFor({ timeout: 30_000 });
    await page.getByRole('button', { name: 'Scan another sheet' }).tap();
    await page.locator('input[type="file"]').setInputFiles({
      name: 'bare.png',
      mimeType: 'image/png',
      buffer: writePng(drawSheet('hello', { width: 900, height: 700 }, [300, 200], 8)),
    });
    await page.getByText('This code is not one of a sheet of ours').waitFor();
    await page
      .locator('input[type="file"]')
      .setInputFiles({ name: 'text.png', mimeType: 'image/png', buffer: Buffer.from('no picture') });
    await page.getByText('"text.png" is no picture that this browser can read').waitFor();
    screen.faults.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
  }, 90_000);
});

describe('a photo', () => {
  it('is kept upright, small, and without what the camera wrote beside it', async () => {
    const { page } = await office.open('/yard/');
    await bringIn(page, 'src/web/yard/photo/shrink-photo.ts', 'photo');
    const kept = await page.evaluate(async () => {
      const { photo } = globalThis as unknown as { photo: typeof import('../../src/web/yard/photo/shrink-photo.ts') };
      const canvas = document.createElement('canvas');
      canvas.width = 3000;
      canvas.height = 2000;
      const context = canvas.getContext('2d')!;
      context.fillStyle = '#ff0000';
      context.fillRect(0, 0, 1500, 2000);
      context.fillStyle = '#0000ff';
      context.fillRect(1500, 0, 1500, 2000);
      const plain = await new Promise<Blob>((resolve) => canvas.toBlob((blob) => resolve(blob!), 'image/jpeg'));
      // EXIF orientation 6: the camera was held upright; the left edge of the picture is its top.
      const exif = [
        ...[0xff, 0xe1, 0x00, 0x22, 0x45, 0x78, 0x69, 0x66, 0x00, 0x00, 0x4d, 0x4d, 0x00, 0x2a, 0x00, 0x00, 0x00, 0x08],
        ...[0x00, 0x01, 0x01, 0x12, 0x00, 0x03, 0x00, 0x00, 0x00, 0x01, 0x00, 0x06, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00],
      ];
      const bytes = new Uint8Array(await plain.arrayBuffer());
      const turned = new Blob([bytes.slice(0, 2), new Uint8Array(exif), bytes.slice(2)], { type: 'image/jpeg' });
      const { blob, width, height } = await photo.shrinkPhoto(await photo.openPicture(turned));
      const shown = await createImageBitmap(blob);
      const look = new OffscreenCanvas(shown.width, shown.height).getContext('2d')!;
      look.drawImage(shown, 0, 0);
      const [above] = [look.getImageData(width / 2, 40, 1, 1).data];
      const [below] = [look.getImageData(width / 2, height - 40, 1, 1).data];
      const text = new TextDecoder('latin1').decode(await blob.arrayBuffer());
      return {
        size: [width, height, shown.width, shown.height],
        type: blob.type,
        above: [above[0]! > 200, above[2]! > 200],
        below: [below[0]! > 200, below[2]! > 200],
        hasExif: text.includes('Exif'),
        isSmaller: blob.size < turned.size,
      };
    });
    expect(kept).toEqual({
      size: [1067, 1600, 1067, 1600],
      type: 'image/jpeg',
      above: [true, false],
      below: [false, true],
      hasExif: false,
      isSmaller: true,
    });
  });
});

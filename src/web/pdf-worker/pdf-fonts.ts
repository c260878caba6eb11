import plain from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf';
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf';
import type { PdfFonts } from '../../files/pdf/write-pdf.ts';

async function fetchFont(address: string): Promise<Uint8Array> {
  const answer = await fetch(address);
  if (!answer.ok)
    throw new Error(
      `the font ${address} of PDF files did not come (answer ${answer.status}): try again once connected`,
    );
  return new Uint8Array(await answer.arrayBuffer());
}

/**
 * Fetches the two fonts of PDF files.
 * @throws Error when one does not come
 */
export async function fetchPdfFonts(): Promise<PdfFonts> {
  const [plainBytes, boldBytes] = await Promise.all([fetchFont(plain), fetchFont(bold)]);
  return { plain: plainBytes, bold: boldBytes };
}

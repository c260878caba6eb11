import { transfer } from 'comlink';
import { type PdfDetails, type PdfFonts, type PdfPage, writePdf } from '../../files/pdf/write-pdf.ts';
import { fetchPdfFonts } from './pdf-fonts.ts';

/** What is to be written: pages as drawings, and what the file says of itself. */
export interface PdfOrder {
  readonly pages: readonly PdfPage[];
  readonly details: PdfDetails;
}

/** Writes PDF files away from the page, with fonts that are fetched once. */
export class PdfWriter {
  #fonts: Promise<PdfFonts> | null = null;

  /** The bytes are handed over, not copied. Rejects when a font does not come, or as `writePdf` does. */
  async write({ pages, details }: PdfOrder): Promise<Uint8Array> {
    const bytes = await writePdf(pages, details, await this.#openFonts());
    return transfer(bytes, [bytes.buffer]);
  }

  /** A font that did not come is asked for again the next time. */
  #openFonts(): Promise<PdfFonts> {
    this.#fonts ??= fetchPdfFonts().catch((error: unknown) => {
      this.#fonts = null;
      throw error;
    });
    return this.#fonts;
  }
}

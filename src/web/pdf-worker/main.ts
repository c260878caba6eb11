import { expose } from 'comlink';
import { PdfWriter } from './pdf-writer.ts';

expose(new PdfWriter());

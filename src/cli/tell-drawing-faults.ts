import { DrawingError } from '../drawing/drawing-error.ts';
import { UsageError } from './exit-codes.ts';

/**
 * Runs what draws.
 * @param what is drawn, for the message
 * @throws UsageError with one line where something of the job cannot be drawn: a sign that the font lacks, or more than a sheet holds
 */
export function tellDrawingFaults<T>(what: string, draw: () => T): T {
  try {
    return draw();
  } catch (error) {
    if (error instanceof DrawingError) throw new UsageError(`${what}: ${error.message}`);
    throw error;
  }
}

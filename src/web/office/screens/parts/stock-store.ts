import * as z from 'zod';

/** What the yard has of the parts of one job, as read from a list; kept on this device, since it is no part of the job. */
const keptStock = z.object({
  name: z.string(),
  /** When it was read, ISO 8601. */
  readAt: z.string(),
  rows: z.array(z.object({ id: z.string(), inStock: z.number(), onOrder: z.number(), arrives: z.string().nullable() })),
});

export type KeptStock = z.infer<typeof keptStock>;

const keyOf = (job: string) => `onepour-stock-${job}`;

/** Null: none was given, or what is kept is of another shape. */
export function readKeptStock(job: string): KeptStock | null {
  const kept = localStorage.getItem(keyOf(job));
  if (kept === null) return null;
  try {
    const read = keptStock.safeParse(JSON.parse(kept));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** @returns false where this device has no room for it */
export function keepStock(job: string, stock: KeptStock | null): boolean {
  try {
    if (stock === null) localStorage.removeItem(keyOf(job));
    else localStorage.setItem(keyOf(job), JSON.stringify(stock));
    return true;
  } catch {
    return false;
  }
}

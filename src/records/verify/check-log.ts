import { hashLogLine, LOG_START } from '../log-line.ts';
import type { Finding, RecordPlace } from './finding.ts';

/** A line of the log as its chain sees it. */
export interface LogLink {
  /** Its number, from 1. */
  readonly line: number;
  readonly job: string;
  /** Of the record's text. */
  readonly hash: string;
  readonly logHash: string;
  readonly at: RecordPlace;
}

/** For so many lines their true place is looked for, which takes a walk through the log each; more are only told to be wrong. */
const MOST_SEARCHES = 20;

interface TruePlace {
  readonly link: LogLink;
  readonly logHash: string;
}

/** The record that continues a line, wherever it stands now: with its own hash of the log, or with the one that stands in its place. */
function findNext(links: readonly LogLink[], previous: string, standing: LogLink): TruePlace | null {
  for (const link of links) {
    const logHash = hashLogLine(previous, link.job, link.hash);
    if (link !== standing && (logHash === link.logHash || logHash === standing.logHash)) return { link, logHash };
  }
  return null;
}

/**
 * Walks through the server's log: lines that are gone, that stand in another's place, that do not continue the one before. What was taken off its end
 * leaves no trace in it: only a head that was written down tells.
 * @param links of the whole log, by rising number
 */
export function checkLog(links: readonly LogLink[]): readonly Finding[] {
  const findings: Finding[] = [];
  let searches = 0;
  let [number, hash] = [0, LOG_START];
  for (const link of links) {
    const isNext = link.line === number + 1;
    if (!isNext) findings.push({ kind: 'lines missing', from: number + 1, to: link.line - 1 });
    number = link.line;
    if (!isNext || hashLogLine(hash, link.job, link.hash) === link.logHash) {
      hash = link.logHash;
      continue;
    }
    searches += 1;
    const next = searches <= MOST_SEARCHES ? findNext(links, hash, link) : null;
    if (next === null) findings.push({ kind: 'log broken', at: link.at });
    else findings.push({ kind: 'out of order', at: next.link.at, belongs: link.line });
    hash = next?.logHash ?? link.logHash;
  }
  return findings;
}

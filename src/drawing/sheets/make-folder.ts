import { addClashes } from '../../assess/clash/add-clashes.ts';
import { addUpJob } from '../../assess/parts/job-parts.ts';
import { layBars } from '../../assess/set-out/lay-bars.ts';
import { listFindings } from '../../assess/set-out/list-findings.ts';
import { type PourPlan, planPour } from '../../assess/set-out/plan-pour.ts';
import type { PanelSetOut, SetOutGroup } from '../../assess/set-out/set-out.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { compareForPour, findReusedLetter } from '../../job/difference/compare-for-pour.ts';
import { compareJobs } from '../../job/difference/compare-jobs.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { indexJob, type JobIndex } from '../../job/job-index.ts';
import { layPlate } from '../detail/plate-in-plan.ts';
import { FOOT_CAUTION } from './cautions.ts';
import { drawFolder, type FolderContent, type FolderPage } from './folder.ts';
import { listWanted } from './list-wanted.ts';
import type { Paper } from './paper.ts';

/** What a folder is made with, beside the job. */
export interface FolderTools {
  readonly paper: Paper;
  /** The state of the job that the changes are told since; null: none was given. */
  readonly earlier: JobFile | null;
  readonly fingerprint: string;
  /** Id of the job in the office: each casting is asked for other lengths. Null: the job is a file, and sheets ask for the corners of each group. */
  readonly job: string | null;
  readonly drawCode: FolderContent['drawCode'];
}

/** A pour folder as pages, with everything that is found against the pour. */
export interface MadeFolder {
  readonly pages: readonly FolderPage[];
  readonly isReady: boolean;
  readonly findings: readonly string[];
}

/** The plate of a connection as it lies on the panel; null where the drawing shows none. */
function findPlate(index: JobIndex, setOut: PanelSetOut, group: SetOutGroup): readonly Point[] | null {
  const connection = index.connectionsOf(setOut.panel.mark).find(({ mark }) => mark === group.connection);
  if (connection === undefined) return null;
  const fixture = index.fixtureOf(connection);
  return fixture === null ? null : layPlate(setOut, group, connection, fixture);
}

/**
 * A pour folder as pages, with everything that is found against the pour.
 * @param pour id of a pour of the job
 * @throws DrawingError where something of the job cannot be drawn: a sign that the font lacks, or more than a sheet holds
 */
export function makeFolder(file: JobFile, pour: string, tools: FolderTools): MadeFolder {
  const index = indexJob(file);
  const bare = planPour(index, pour);
  const difference = tools.earlier === null ? null : compareJobs(tools.earlier, file);
  const reused = difference === null ? null : findReusedLetter(difference);
  const plan: PourPlan = {
    ...bare,
    setOuts: bare.setOuts.map((setOut) => addClashes(index, setOut)),
    problems: [...bare.problems, ...(reused === null ? [] : [{ severity: 'error' as const, text: reused }])],
  };
  const [parts] = addUpJob(index, [plan], []).pours;
  if (parts === undefined) throw new Error(`pour ${pour} has no parts`);
  const { yard, rules } = file.library;
  const { project, revision } = file.job;
  const pages = drawFolder({
    parts,
    spares: yard.spares,
    cover: {
      changes:
        difference === null
          ? null
          : compareForPour(
              difference,
              plan.setOuts.map(({ panel }) => panel.mark),
            ),
      contacts: yard.contacts,
      statements: rules.statements,
    },
    facts: {
      paper: tools.paper,
      project: project.number === null ? project.name : `${project.number} ${project.name}`,
      revision,
      fingerprint: tools.fingerprint,
      caution: FOOT_CAUTION,
    },
    barsOf: ({ panel }) => layBars(panel),
    wantedOf: (setOut, serial) => listWanted(index, tools.job, setOut, serial),
    plateOf: (setOut, group) => findPlate(index, setOut, group),
    drawCode: tools.drawCode,
  });
  const findings = listFindings(plan).flatMap(({ isStop, words }) => (isStop ? [words] : []));
  return { pages, isReady: findings.length === 0, findings };
}

/** What the file of a folder says of itself; its date is the day of the pour, so that the same job gives the same bytes. */
export function describeFolder({ job }: JobFile, pour: string) {
  const { date } = job.pours.find(({ id }) => id === pour)!;
  return {
    title: `Pour folder ${pour}`,
    author: job.project.name,
    subject: 'Set-out, parts and checks of inserts cast into precast panels',
    date: new Date(`${date}T00:00:00Z`),
    language: 'en',
  };
}

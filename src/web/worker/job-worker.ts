import type { Asked, Capacities } from '../../assess/capacities.ts';
import type { ChooseOptions } from '../../assess/choose/choice.ts';
import type { ConnectionAnswer } from '../../assess/connection-answer.ts';
import type { PartsScope, YardLists } from '../../assess/parts/parts-answer.ts';
import type { Remedies } from '../../assess/remedies/remedy.ts';
import type { NoZone, PositionZone, ZoneSubject } from '../../assess/zone/trace-position-zone.ts';
import type { CatalogueReading } from '../../files/csv/read-catalogue.ts';
import type { ListReading, StockRow } from '../../files/csv/read-stock.ts';
import type { SurveyChoices } from '../../files/survey/survey-file.ts';
import type { DifferenceOutline } from '../../job/difference/outline-difference.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import type { Edit } from '../../job/edit/edit.ts';
import type { OtherOutcome, OtherParts } from './assess-other.ts';
import { type AssessOutcome, assessStale, type TellAnswers, type TellProgress } from './assess-run.ts';
import {
  compareStates,
  FrozenStates,
  listRevisionPanels,
  type RevisionPanels,
  type StateOfJob,
} from './compare-states.ts';
import {
  askCapacities,
  askChoice,
  askEditions,
  type ChoiceAnswer,
  type EditionsCompared,
} from './connection-questions.ts';
import type { FolderQuestion, FolderView } from './folder-view.ts';
import { HeldJob } from './held-job.ts';
import type { MatchedSurvey, SurveyDesign } from './match-survey.ts';
import type { CastingView, PartsList, PartsView, PourPartsView } from './parts-view.ts';
import type { TakenGroups, TellChances } from './plate-chances.ts';
import type { TellPour } from './pour-findings.ts';
import { type PreviewedConnection, previewInHeld } from './preview-edit.ts';
import type { FilesReading, GivenFile } from './read-files.ts';
import type { SetOutFile } from './set-out-file.ts';
import type { SetOutView } from './set-out-view.ts';
import type { FoundBox } from './zone-questions.ts';

/**
 * What the page asks of the worker, a method a question. It holds a copy of the job that follows the page's by the same edits, so that a question
 * carries no job. What a method does lies in a file of its own and takes the held job.
 */
export class JobWorker {
  #held: HeldJob | null = null;
  #assessing = 0;
  readonly #frozen = new FrozenStates();
  #planning = 0;
  #comparing = 0;
  #chancing = 0;

  /** Takes a job that was read by `readJobDocument`; whatever ran on another is left. */
  open(file: JobFile): void {
    this.#assessing += 1;
    this.#held = new HeldJob(file);
  }

  /** @throws Error when no job is open, or the edit was made on another state */
  apply(edit: Edit): void {
    this.#job.apply(edit);
  }

  /**
   * Assesses the connections that have no answer yet: all after `open`, then those that an edit touched. A newer call takes over.
   * @param marks panels to look at; null: all
   * @throws Error when no job is open
   */
  async assess(
    marks: readonly string[] | null,
    onAnswers: TellAnswers,
    onProgress: TellProgress,
  ): Promise<AssessOutcome> {
    this.#assessing += 1;
    const mine = this.#assessing;
    return assessStale(this.#job, marks, onAnswers, onProgress, () => mine !== this.#assessing);
  }

  /**
   * In what a later state of a job differs from an earlier one.
   * @throws Error with words for the person where a state cannot be had
   */
  async compare(job: string, before: StateOfJob, after: StateOfJob): Promise<DifferenceOutline> {
    return compareStates(job, before, after, () => this.#job.file, this.#frozen);
  }

  /** Which panels each issued revision has and changed. */
  async listRevisionPanels(job: string, letters: readonly string[]): Promise<readonly RevisionPanels[]> {
    return listRevisionPanels(job, letters, this.#frozen);
  }

  /** A table as CSV. */
  async writeTable(
    columns: readonly string[],
    rows: readonly Readonly<Record<string, string | number | null>>[],
  ): Promise<string> {
    const { writeList } = await import('../../files/csv/write-list.ts');
    return writeList(columns, rows);
  }

  /** The job as one file. */
  async writeJob(): Promise<string> {
    const { writeWhole } = await import('./write-files.ts');
    return writeWhole(this.#job.file);
  }

  /** The job as schedules, by the names of their files. */
  async writeSchedules(): Promise<readonly (readonly [string, string])[]> {
    const { writeAllSchedules } = await import('./write-files.ts');
    return writeAllSchedules(this.#job.file);
  }

  /** Answers that the page has, as a table in CSV. */
  async writeResults(answers: readonly ConnectionAnswer[]): Promise<string> {
    const { writeAnswers } = await import('./write-files.ts');
    return writeAnswers(answers);
  }

  /** Reads files into a job or their faults; needs no open job. */
  async readFiles(given: readonly GivenFile[]): Promise<FilesReading> {
    const { readFiles } = await import('./read-files.ts');
    return readFiles(given);
  }

  /** The folder of a pour as pages. */
  async folder(question: FolderQuestion): Promise<FolderView> {
    const { viewFolder } = await import('./folder-view.ts');
    return viewFolder(this.#job.file, question);
  }

  /** Tells of each pour what is found, in the order of the job; a newer call takes over. */
  async pourFindings(onPour: TellPour): Promise<boolean> {
    this.#planning += 1;
    const mine = this.#planning;
    const { findPourFindings } = await import('./pour-findings.ts');
    return findPourFindings(this.#job, onPour, () => mine !== this.#planning);
  }

  /** Counts the parts of the whole job against what the yard has. */
  async parts(lists: YardLists): Promise<PartsView> {
    const { viewParts } = await import('./parts-view.ts');
    return viewParts(this.#job.index, lists);
  }

  /** What one pour of the job takes. */
  async pourParts(pour: string): Promise<PourPartsView> {
    const { viewPourParts } = await import('./parts-view.ts');
    return viewPourParts(this.#job.index, pour);
  }

  /** What one casting of a panel takes, in each pour that casts it. */
  async panelParts(mark: string): Promise<readonly CastingView[]> {
    const { viewPanelParts } = await import('./parts-view.ts');
    return viewPanelParts(this.#job.index, mark);
  }

  /** A list of parts as CSV. */
  async partsList(list: PartsList, scope: PartsScope, lists: YardLists): Promise<string> {
    const { writePartsList } = await import('./parts-view.ts');
    return writePartsList(this.#job.index, list, scope, lists);
  }

  /** The set-out of one panel with everything that is found against it. */
  async setOutView(mark: string): Promise<SetOutView> {
    const { viewSetOut } = await import('./set-out-view.ts');
    return viewSetOut(this.#job.index, mark);
  }

  /** The set-out of one panel as a drawing file. */
  async setOutFile(mark: string, format: 'dxf' | 'svg'): Promise<SetOutFile> {
    const { writeSetOutFile } = await import('./set-out-file.ts');
    return writeSetOutFile(this.#job.index, mark, format);
  }

  /** Every connection as it is and as it would be with something else; a newer call takes over. */
  async assessOther(parts: OtherParts, onProgress: TellProgress): Promise<OtherOutcome> {
    this.#comparing += 1;
    const mine = this.#comparing;
    const { assessOther } = await import('./assess-other.ts');
    return assessOther(this.#job, parts, onProgress, () => mine !== this.#comparing);
  }

  /** The chance of every connection's plate by what the yard has learned; a newer call takes over. */
  async plateChances(learned: TakenGroups, onFound: TellChances): Promise<boolean> {
    this.#chancing += 1;
    const mine = this.#chancing;
    const { findPlateChances } = await import('./plate-chances.ts');
    return findPlateChances(this.#job, learned, onFound, () => mine !== this.#chancing);
  }

  /** Reads a file of surveyed points and suggests which is which; needs no open job. */
  async matchSurvey(
    name: string,
    bytes: Uint8Array,
    choices: SurveyChoices,
    design: SurveyDesign,
  ): Promise<MatchedSurvey> {
    const { matchSurvey } = await import('./match-survey.ts');
    return matchSurvey(name, bytes, choices, design);
  }

  /** Reads a stock list; needs no open job. */
  async readStock(name: string, content: string): Promise<ListReading<StockRow>> {
    const { readStock } = await import('../../files/csv/read-stock.ts');
    return readStock(name, content);
  }

  /** Reads catalogue.csv into the catalogue of the open job, which stays as it is. */
  async readCatalogue(content: string, how: 'add' | 'replace'): Promise<CatalogueReading> {
    const { readCatalogue } = await import('../../files/csv/read-catalogue.ts');
    return readCatalogue(content, this.#job.file, how);
  }

  /** The catalogue of the open job as catalogue.csv. */
  async writeCatalogue(): Promise<string> {
    const { writeCatalogue } = await import('../../files/csv/read-catalogue.ts');
    return writeCatalogue(this.#job.file.library.catalogue.items);
  }

  /** What a connection carries at most. @throws Error when no job is open, or it has no such connection */
  async capacities(mark: string): Promise<Asked<Capacities>> {
    return askCapacities(this.#job, mark);
  }

  /** What would make a connection pass. @throws Error as `capacities` */
  async remedies(mark: string): Promise<Remedies> {
    const { findRemedies } = await import('../../assess/remedies/find-remedies.ts');
    return findRemedies(this.#job.file, mark);
  }

  /** Where an insert of a connection, or all together, may sit. @throws Error as `capacities` */
  async positionZone(mark: string, subject: ZoneSubject): Promise<PositionZone | NoZone> {
    const { askZone } = await import('./zone-questions.ts');
    return askZone(this.#job, mark, subject);
  }

  /** The box that holds for all inserts of a connection at once. @throws Error as `capacities` */
  async positionBox(mark: string): Promise<FoundBox> {
    const { askBox } = await import('./zone-questions.ts');
    return askBox(this.#job, mark);
  }

  /** One connection by every edition. @throws Error as `capacities` */
  editions(mark: string): EditionsCompared {
    return askEditions(this.#job, mark);
  }

  /** Every insert of the catalogue tried in a connection. @throws Error as `capacities` */
  choose(mark: string, options: ChooseOptions): ChoiceAnswer {
    return askChoice(this.#job, mark, options);
  }

  /** What an edit would do to some connections; it is not made. @throws Error when it was made on another state */
  previewChanges(changes: Edit['changes'], marks: readonly string[]): readonly PreviewedConnection[] {
    return previewInHeld(this.#job, changes, marks);
  }

  get #job(): HeldJob {
    if (this.#held === null) throw new Error('no job is open in the worker; expected `open` first');
    return this.#held;
  }
}

/** An input that a calculation cannot work with. `message` is one line: "key: what was wrong, what was expected". */
export class CalcError extends Error {
  /** The key of the input that is wrong, e.g. "action" or "bolts[2].stressArea_mm2". */
  readonly key: string;

  constructor(key: string, problem: string) {
    super(`${key}: ${problem}`);
    this.name = 'CalcError';
    this.key = key;
  }
}

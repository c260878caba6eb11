import { anchorage } from '../engine/checks/anchorage.ts';
import { type AnchorageInput, anchorageInput } from './anchorage-input.ts';
import { type AnchorageOutput, anchorageOutput, writeAnchorage } from './anchorage-output.ts';
import { listAssumptions, readActions, readGroup, tellByKey } from './read-group.ts';

/**
 * Resistance of a group of cast-in inserts, every failure mode, as the contract gives it.
 * @throws CalcError where the group cannot be computed
 */
function run(given: AnchorageInput, keepsSteps: boolean): AnchorageOutput {
  return tellByKey(() => {
    const actions = given.actions === undefined ? null : readActions(given, given.actions);
    const group = readGroup(given);
    const result = anchorage(group, actions, keepsSteps);
    const assumed = listAssumptions(given);
    if (actions === null) assumed.push('no action given: resistances only, strength not checked');
    return writeAnchorage(result, assumed, keepsSteps);
  });
}

export const anchorageCalc = {
  name: 'anchorage',
  gives: 'resistance of every failure mode of a group of cast-in inserts (EN 1992-4, AS 5216, ACI 318)',
  input: anchorageInput,
  output: anchorageOutput,
  run,
};

import { findHoldingMethod, findHoldingStage, listHoldingPlaces } from '../../engine/form/holding-methods.ts';
import { type AssemblyQuestion, type Finding, findPart } from './assembly-question.ts';

const LARGE = ['mould face', 'trowelled face'] as const;

/** A method where it cannot hold. Of the two large faces it is the other one: then turning the panel over would help. */
function checkPlace({ way, place }: AssemblyQuestion): Finding[] {
  const { method } = way;
  if (findHoldingStage(method, place) !== null) return [];
  const places = listHoldingPlaces(method);
  const where = places.map((one) => (one === 'edge' ? 'a side form' : `the ${one}`)).join(' or ');
  const at = place === 'edge' ? 'in an edge' : `at the ${place}`;
  const text = `${way.name} (${method}) holds at ${where}; this insert lies ${at}`;
  const wouldTurn = place !== 'edge' && LARGE.some((one) => one !== place && places.includes(one));
  if (wouldTurn)
    return [
      {
        severity: 'error',
        kind: 'face',
        text: `${text}: turn the panel over, or choose a way of holding for the ${place}`,
      },
    ];
  return [
    {
      severity: 'error',
      kind: 'not decided',
      text: `${text}: choose a way of holding for ${place === 'edge' ? 'a side form' : `the ${place}`}`,
    },
  ];
}

function checkMaterial({ way, place, bed }: AssemblyQuestion): Finding[] {
  const { form } = findHoldingMethod(way.method);
  if (findHoldingStage(way.method, place) === null) return [];
  if (bed === null) {
    const unknown = [
      ...(form === null ? [] : [`that it is of ${form}, which ${way.method} needs, is not known`]),
      ...(way.method === 'chair' ? ['how far form and screed give way is not known and taken as 0'] : []),
    ];
    if (unknown.length === 0) return [];
    const text = `no bed named, form material not known: ${unknown.join('; ')}; name the bed in a pour`;
    return [{ severity: 'warning', kind: 'form material', text }];
  }
  const found = place === 'edge' ? bed.sideForm : bed.form;
  if (form === null || form === found) return [];
  const what = place === 'edge' ? 'the side forms' : 'the form';
  const why = form === 'timber' ? 'nails do not go into steel' : 'a magnet does not hold on timber';
  return [
    {
      severity: 'error',
      kind: 'form material',
      text: `${way.name} (${way.method}) needs ${form}, ${what} of ${bed.name} ${place === 'edge' ? 'are' : 'is'} of ${found}: ${why}; choose another way of holding, or another bed`,
    },
  ];
}

/** A top left open beside the screed fills with mortar; a board or bar closes the thread by its own bolt. */
function checkCap(question: AssemblyQuestion): Finding[] {
  const { way, place } = question;
  if (place !== 'trowelled face' || (way.method !== 'chair' && way.method !== 'tied to the cage')) return [];
  if (way.parts.some(({ part }) => findPart(question, part).kind === 'cap')) return [];
  const text = `${way.name} names no cap, and an open thread at the trowelled face fills with mortar: add a cap to its parts`;
  return [{ severity: 'warning', kind: 'not decided', text }];
}

/** What is wrong with a way of holding at the place and on the bed where it is used. */
export function checkMethod(question: AssemblyQuestion): Finding[] {
  return [...checkPlace(question), ...checkMaterial(question), ...checkCap(question)];
}

/** What is in the way of a cut, and what should be looked at: one sentence a code, each saying what to do. */
import type { Note } from '../../../core/index.ts';
import type { Units } from '../../state/snapshot.ts';
import { many } from '../numbers.ts';
import { clothFieldName, opening } from './fields.ts';
import { sayLength, sayNumber } from './lengths.ts';

export function sayClothProblem({ at, code, params }: Note, units: Units, pad: string): string {
  const name = clothFieldName(at, pad);
  const mm = (key: string): string => sayLength(Number(params[key]), units);
  const isLength = params.reads === undefined || params.reads === 'length' || params.reads === 'long';
  const value = (key: string): string => (isLength ? mm(key) : sayNumber(Number(params[key])));
  switch (code) {
    case 'empty':
      return `Enter ${name}`;
    case 'not-a-length':
      return isLength
        ? `${opening(name)} must be a length, like ${units === 'cm' ? '41.5' : '16 3/8'}`
        : `${opening(name)} must be a number, like ${params.reads === 'whole' ? '20' : '4.95'}`;
    case 'several':
      return `${opening(name)} must be one ${isLength ? 'length' : 'number'}`;
    case 'ambiguous':
      return `${opening(name)} can be read in 2 ways: write it without the last zeros, or without the point`;
    case 'not-whole':
      return `${opening(name)} must be a whole number, like 20`;
    case 'too-small':
    case 'length-too-small':
      return `${opening(name)} must be ${value('least')} or more`;
    case 'too-large':
    case 'length-too-large':
      return `${opening(name)} must be ${value('most')} or less`;
    case 'diagonals-differ':
      return `The diagonals differ by ${mm('off')}: pull the panel square and measure again, or choose 4 sides of their own`;
    case 'diagonals-unlikely':
      return `With this width and height a diagonal is ${mm('wanted')}, not ${mm('mean')}: measure again`;
    case 'paper-pattern':
      return `A panel with ${many(Number(params.sides), 'corner')} has no straight sides: draw round it on paper and cut the cloth by that`;
    case 'side-too-long':
      return `${opening(name)} is as long as all others together: measure the sides again`;
    case 'diagonal-count':
      return `Enter ${many(Number(params.wanted), 'diagonal')}, or none`;
    case 'diagonals-do-not-close':
      return 'Sides and diagonals do not close: measure the diagonals again, from corner 1';
    case 'bends-inwards':
      return `The panel bends inwards at corner ${Number(params.corner) + 1}: measure again, or cut by a paper pattern of it`;
    case 'nothing-left':
      return `Nothing is left of the cloth with a foundation ${mm('depth')} deep: measure its depth again`;
    default:
      return `Check ${name}`;
  }
}

export function sayClothNote({ code, params }: Note, units: Units): string {
  const mm = (key: string): string => sayLength(Number(params[key]), units);
  switch (code) {
    case 'readings-differ':
      return `Your 2 readings differ by ${mm('off')}. Taken: ${mm('length')}, half way. Measure a 3rd time if you can.`;
    case 'corners-on-circle':
      return Number(params.diagonals) === 1
        ? 'The corners are taken to lie on a circle. 1 diagonal from corner 1 makes it certain.'
        : `The corners are taken to lie on a circle. ${Number(params.diagonals)} diagonals from corner 1 make it certain.`;
    default:
      return '';
  }
}

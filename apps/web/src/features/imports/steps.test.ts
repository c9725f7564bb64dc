import { expect, test } from 'vitest';
import type { Import } from '#contracts/imports.ts';
import { dueStep, openSteps } from './steps.ts';

const unknown: Import['unknown'] = [{ field: 'line', plantId: null, raw: 'L9', rows: 2 }];
const outcome = { rows: 3 } as Import['outcome'];

test.each([
  [{ state: 'uploaded', unknown: [], outcome: null }, 'columns', ['columns']],
  [{ state: 'checked', unknown, outcome }, 'values', ['columns', 'values', 'check']],
  [{ state: 'checked', unknown: [], outcome }, 'check', ['columns', 'check']],
  [{ state: 'interrupted', unknown: [], outcome: null }, 'columns', ['columns']],
  [{ state: 'committed', unknown: [], outcome }, 'result', ['result']],
  [{ state: 'cancelled', unknown: [], outcome: null }, 'result', ['result']],
] as const)('%j waits at %s', (job, due, open) => {
  expect(dueStep({ ...job, unknown: [...job.unknown] })).toBe(due);
  expect(openSteps({ ...job, unknown: [...job.unknown] })).toEqual(open);
});

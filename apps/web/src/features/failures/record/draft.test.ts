import { describe, expect, test } from 'vitest';
import { NewReport } from '#contracts/failures.ts';
import { blankDraft, reportOf, withCavities } from './draft.ts';
import { type Place, usedLast } from './place.ts';

const plant = { id: '0197b5a0-0000-7000-8000-000000000001', zone: 'Asia/Tokyo' };
const place: Place = {
  settled: true,
  plantId: plant.id,
  lineId: null,
  stageId: null,
  found: 'lock_check',
  station: 'Bench 3',
  shift: 'Early',
  recentHousings: [],
};
const at = new Date('2026-06-15T16:00:00Z');

describe('the report made of a draft', () => {
  const report = reportOf('0197b5a0-0000-7000-8000-000000000002', place, blankDraft, plant, undefined, at);
  test('is what the server takes', () => expect(NewReport.safeParse(report).error).toBeUndefined());
  test('was found on the plant’s day, where it is tomorrow already', () => {
    expect(report.foundOn).toBe('2026-06-16');
    expect(report.foundAt).toBe('2026-06-15T16:00:00.000Z');
  });
  test('has no time of day when it was found on another day', () => {
    const late = reportOf('id', place, { ...blankDraft, foundOn: '2026-06-01' }, plant, undefined, at);
    expect([late.foundOn, late.foundAt]).toEqual(['2026-06-01', null]);
  });
  test('is safety-relevant where the housing is', () => {
    expect(reportOf('id', place, blankDraft, plant, { safetyRelevant: true }, at).safety).toBe(true);
  });
});

describe('the quantity', () => {
  test('follows the number of cavities', () => {
    const two = withCavities(blankDraft, ['A1', 'A2']);
    expect(two.quantityFound).toBe(2);
    expect(withCavities({ ...blankDraft, ...two }, []).quantityFound).toBe(1);
  });
  test('stays where somebody has set it', () =>
    expect(withCavities({ ...blankDraft, quantityFound: 12 }, ['A1', 'A2']).quantityFound).toBe(12));
});

test('six housings are remembered, the last used first', () => {
  expect(usedLast(['a', 'b', 'c', 'd', 'e', 'f'], 'g')).toEqual(['g', 'a', 'b', 'c', 'd', 'e']);
  expect(usedLast(['a', 'b'], 'b')).toEqual(['b', 'a']);
  expect(usedLast(['a'], null)).toEqual(['a']);
});

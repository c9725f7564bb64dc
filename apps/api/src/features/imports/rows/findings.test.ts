import { expect, it } from 'vitest';
import { readFindings } from './findings.ts';

it('reads codes and names of both languages, answers and measurements', () => {
  expect(
    readFindings('probe_mark = yes; Latch whitened: no | Wire pulls to one side = could not tell\ntie_near=12,5/25 mm'),
  ).toEqual([
    { code: 'probe_mark', answer: 'yes', value: null, limitValue: null, unit: null },
    { code: 'latch_whitened', answer: 'no', value: null, limitValue: null, unit: null },
    { code: 'side_load', answer: 'could_not_tell', value: null, limitValue: null, unit: null },
    { code: 'tie_near', answer: 'yes', value: 12.5, limitValue: 25, unit: 'mm' },
  ]);
  expect(readFindings('Abdruck einer Prüfspitze = ja')).toMatchObject([{ code: 'probe_mark', answer: 'yes' }]);
  expect(readFindings('force_below_minimum = 20/10 lbf')).toMatchObject([{ answer: 'no', unit: 'N' }]);
});

it('says which part it cannot understand: unknown, computed, twice, without limit, of another unit', () => {
  for (const wrong of [
    'broken = yes',
    'lock_open = yes',
    'tie_near = 12 mm',
    'tie_near = 12/25 N',
    'residue = perhaps',
    'residue',
  ])
    expect(readFindings(`probe_mark = yes; ${wrong}`)).toBe(wrong);
  expect(readFindings('residue = yes; residue = no')).toBe('residue = no');
});

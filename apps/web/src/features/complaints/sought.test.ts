import { expect, test } from 'vitest';
import { soughtBy } from './sought.ts';

const nothing = {
  plantId: 'p',
  customerId: null,
  customerRef: null,
  title: '',
  housingId: null,
  terminalId: null,
  lots: [],
  effect: null,
};

test('similar cases are sought once the case can be told from others, by what is known only', () => {
  expect(soughtBy(nothing)).toBeNull();
  expect(soughtBy({ ...nothing, customerId: 'c', title: 'loose' })).toBeNull();
  expect(soughtBy({ ...nothing, plantId: '', lots: ['L1'] })).toBeNull();
  expect(soughtBy({ ...nothing, lots: ['L1'] }, 'me')).toEqual({ plantId: 'p', lots: ['L1'], except: 'me' });
  expect(soughtBy({ ...nothing, title: 'terminal loose ' })).toEqual({ plantId: 'p', text: 'terminal loose' });
});

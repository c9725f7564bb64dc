import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DateOrder, readDate, readingsOf } from './date.ts';
import { decideOrder, noDateEvidence, observeDate } from './date-order.ts';

const decide = (...values: (string | number)[]) => {
  const evidence = noDateEvidence();
  for (const value of values) observeDate(evidence, value);
  return decideOrder(evidence);
};
const dayOf = (cell: string | number, order: DateOrder = 'ymd') => {
  const reading = readDate(cell, order);
  return typeof reading === 'string'
    ? reading
    : `${reading.day}${reading.time ? ` ${reading.time.clock}${reading.time.offset ?? ''}` : ''}`;
};

describe('a date', () => {
  test.each([
    ['2026-03-04', 'dmy', '2026-03-04'],
    ['2026/3/4 14:30', 'mdy', '2026-03-04 14:30:00'],
    ['2026-03-04T14:30:05.123Z', 'ymd', '2026-03-04 14:30:05Z'],
    ['2026-03-04 14:30:05+0200', 'ymd', '2026-03-04 14:30:05+02:00'],
    ['20260304', 'dmy', '2026-03-04'],
    ['04032026', 'dmy', '2026-03-04'],
    ['4.3.2026', 'dmy', '2026-03-04'],
    ['04. 03. 2026', 'dmy', '2026-03-04'],
    ['4.3.26', 'dmy', '2026-03-04'],
    ['3/4/2026', 'mdy', '2026-03-04'],
    ['3/4/2026 2:30 PM', 'mdy', '2026-03-04 14:30:00'],
    ['3/4/2026 12:05 am', 'mdy', '2026-03-04 00:05:00'],
    ['04.03.2026 7.30 Uhr', 'dmy', '2026-03-04 07:30:00'],
    ['26-03-04', 'ymd', '2026-03-04'],
    ['4. März 2026', 'mdy', '2026-03-04'],
    ['4 Mrz 2026', 'mdy', '2026-03-04'],
    ['Mar 4, 2026', 'dmy', '2026-03-04'],
    ['March 4th, 2026', 'dmy', '2026-03-04'],
    ['04-Mar-26', 'ymd', '2026-03-04'],
    ['1. Dez. 2026', 'ymd', '2026-12-01'],
    ['Mi 04.03.2026', 'dmy', '2026-03-04'],
    ['Wednesday, 4 March 2026', 'ymd', '2026-03-04'],
    ['29.02.2028', 'dmy', '2028-02-29'],
    // Excel's serial of 2024-01-01 is 45292 (its own help text for DATEVALUE's serial numbers, from memory).
    ['45292', 'dmy', '2024-01-01'],
    [45_292.5, 'dmy', '2024-01-01 12:00:00'],
  ] as const)('%j in the order %s is %s', (cell, order, value) => expect(dayOf(cell, order)).toBe(value));

  test.each([
    ['29.02.2026', 'dmy', 'not_a_date'],
    ['31/04/2026', 'dmy', 'not_a_date'],
    ['14/03/2026', 'mdy', 'not_a_date'],
    ['20260-03-04', 'ymd', 'out_of_range'],
    ['04.03.20260', 'dmy', 'out_of_range'],
    ['1.1.1999', 'dmy', 'out_of_range'],
    ['2026-03', 'ymd', 'not_a_date'],
    ['March 2026', 'ymd', 'not_a_date'],
    ['2026-03-04 25:00', 'ymd', 'not_a_date'],
    ['12:30', 'ymd', 'not_a_date'],
    ['yesterday', 'ymd', 'not_a_date'],
    ['1', 'ymd', 'not_a_date'],
    [1e30, 'ymd', 'not_a_date'],
  ] as const)('%j in the order %s is refused: %s', (cell, order, reason) => expect(readDate(cell, order)).toBe(reason));

  const days = fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true });
  test('written in an order is read back in that order', () => {
    fc.assert(
      fc.property(
        days,
        fc.constantFrom<DateOrder>('ymd', 'dmy', 'mdy'),
        fc.constantFrom('.', '/', '-'),
        (date, order, sign) => {
          const iso = date.toISOString().slice(0, 10);
          const [y, m, d] = iso.split('-') as [string, string, string];
          const text = [...order].map((part) => ({ y, m, d })[part]).join(sign);
          expect(dayOf(text, order)).toBe(iso);
        },
      ),
    );
  });

  test('has at most one meaning in each order and never a day that does not exist', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^\d{1,4}[./-]\d{1,2}[./-]\d{1,6}( \d{1,2}:\d{2})?$/), (text) => {
        for (const reading of Object.values(readingsOf(text)))
          if (typeof reading === 'object')
            expect(new Date(`${reading.day}T00:00:00Z`).toISOString().slice(0, 10)).toBe(reading.day);
      }),
    );
  });
});

describe('the order of a column', () => {
  test.each([
    [['04.03.2026', '13.03.2026'], { order: 'dmy' }],
    [['04/03/2026', '03/14/2026'], { order: 'mdy' }],
    [['2026-03-04', '45292'], { order: 'ymd' }],
    [['04/03/2026'], { ask: ['dmy', 'mdy'] }],
    [['04.03.2026', '05.03.2026'], { ask: ['dmy', 'mdy'] }],
    [['05/05/2026'], { order: 'ymd' }],
    [['04/03/26'], { ask: ['ymd', 'dmy', 'mdy'] }],
    [['13/03/2026', '03/14/2026'], { ask: ['dmy', 'mdy'] }],
    [['', 'no date'], { order: 'ymd' }],
  ] as const)('%j gives %j', (values, decision) => expect(decide(...values)).toEqual(decision));

  test('once one value leaves no choice, is the one in which all values were written', () => {
    const written = fc.tuple(
      fc.integer({ min: 1, max: 28 }),
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 2001, max: 2098 }),
    );
    fc.assert(
      fc.property(fc.array(written, { minLength: 1 }), fc.integer({ min: 13, max: 28 }), (dates, telling) => {
        const texts = [...dates, [telling, 6, 2026] as const].map(([d, m, y]) => `${d}/${m}/${y}`);
        expect(decide(...texts)).toEqual({ order: 'dmy' });
      }),
    );
  });
});

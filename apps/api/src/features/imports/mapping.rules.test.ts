import { describe, expect, test } from 'vitest';
import { suggestFields } from './mapping.rules.ts';

const none = () => false;
const columns = (it: Record<string, string[]>) => Object.entries(it).map(([header, values]) => ({ header, values }));

describe('a suggestion', () => {
  test('follows German headers of a quality list', () => {
    const list = columns({
      'Melde-Nr.': ['1'],
      Werk: ['A'],
      Datum: ['1.2.2026'],
      Fundort: ['EOL'],
      Anzahl: ['2'],
      Fehlerursache: ['Werkzeug'],
      Bemerkungen: ['x'],
      Irgendwas: ['y'],
    });
    expect(suggestFields('failures', list, none)).toEqual([
      'externalRef',
      'plant',
      'foundOn',
      'stage',
      'quantityFound',
      'cause',
      'note',
      null,
    ]);
  });
  test('follows English headers, units in brackets left out', () => {
    const list = columns({
      'Ticket No': ['7'],
      Site: ['A'],
      'Date found': ['2026-01-02'],
      'Qty (pcs)': ['3'],
      'Build date': ['2026-01-01'],
      'Scrap cost [EUR]': ['1,5'],
      Cavity: ['A1'],
    });
    expect(suggestFields('failures', list, none)).toEqual([
      'externalRef',
      'plant',
      'foundOn',
      'quantityFound',
      'builtOn',
      'cost.scrap',
      'cavities',
    ]);
  });
  test('is refused by values that cannot be what the header says', () => {
    expect(suggestFields('failures', columns({ Datum: ['red', 'blue', 'green'] }), none)).toEqual([null]);
  });
  test('knows master data by its values where the header says nothing', () => {
    const isPlant = (of: string, text: string) => of === 'plant' && /^P\d$/.test(text);
    expect(suggestFields('failures', columns({ 'Column F': ['P1', 'P2'] }), isPlant)).toEqual(['plant']);
  });
  test('gives a field to one column only', () => {
    const suggested = suggestFields(
      'production',
      columns({ Day: ['2026-01-01'], Date: ['2026-01-01'], Units: ['4'], Quantity: ['4'] }),
      none,
    );
    expect(suggested.filter((field) => field === 'day')).toHaveLength(1);
    expect(suggested.filter((field) => field === 'units')).toHaveLength(1);
  });
});

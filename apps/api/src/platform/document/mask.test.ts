import { describe, expect, it } from 'vitest';
import { maskOthers } from './mask.ts';

const customers = [
  { code: 'QXV', name: 'Quillhaven Motors' },
  { code: 'B2', name: 'Brandmöwe' },
];
const mask = (text: string, locale: 'en' | 'de' = 'en') => maskOthers(text, { customers, locale });

describe('words that do not leave the house', () => {
  it.each([
    'Quillhaven Motors',
    'quillhaven  motors',
    'QUILLHAVEN-MOTORS',
    'Quillhaven’s',
    'Quillhaven',
    'QXV',
    'Brandmöwe',
    'Brandmo\u0308we',
  ])('the other customer as %s', (name) => {
    expect(mask(`seen at ${name}, twice`).text).toBe('seen at another customer, twice');
  });
  it.each([
    '€ 1,250.00',
    '1.250,00 €',
    '12 500 EUR',
    '4,200 USD',
    'EUR 12k',
    '$3.5 million',
    '900 zł',
    '12,- €',
    '250 euros',
    '7 Mio. EUR',
    '¥30,000',
  ])('the amount %s', (amount) => {
    expect(mask(`it cost ${amount} so far`).text).toBe('it cost [amount] so far');
  });
  it('says what it took out', () => {
    expect(mask('QXV paid 10 EUR', 'de')).toEqual({
      text: 'ein anderer Kunde paid [Betrag]',
      masked: [
        { words: 'QXV', kind: 'customer' },
        { words: '10 EUR', kind: 'money' },
      ],
    });
  });
  it.each([
    '12 of 340 terminals',
    'QXVA',
    '0.75 mm²',
    'at 14:30 on line L2',
    '3 EUROPA pallets',
    'R05-4471-X',
    'cavity B2',
    'a quillhaven of its own',
  ])('leaves %s alone', (text) => {
    expect(mask(text)).toEqual({ text, masked: [] });
  });
});

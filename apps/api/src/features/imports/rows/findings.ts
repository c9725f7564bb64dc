import { type SettledFinding, settleFinding } from '#api/features/evidence/findings.rules.ts';
import {
  type Answer,
  type FindingCode,
  type FindingUnit,
  findingCodes,
  findingUnits,
} from '#contracts/finding-catalogue.ts';
import { findingTerms as de } from '#contracts/finding-terms.de.ts';
import { findingTerms as en } from '#contracts/finding-terms.en.ts';
import { fold } from '../interpret/fold.ts';

const codeOf = new Map<string, FindingCode>(
  findingCodes.flatMap((code) => [code, en[code].name, de[code].name].map((name) => [fold(name), code] as const)),
);
const answerOf = new Map<string, Answer>(
  Object.entries({
    yes: ['yes', 'y', 'ja', 'j'],
    no: ['no', 'n', 'nein'],
    could_not_tell: ['could not tell', 'unknown', 'not checked', 'nicht feststellbar', 'unbekannt'],
  } as const).flatMap(([answer, words]) => words.map((word) => [fold(word), answer as Answer] as const)),
);
const measured = /^(-?\d{1,6}(?:[.,]\d{1,4})?)\s*\/\s*(-?\d{1,6}(?:[.,]\d{1,4})?)\s*([a-z]+)?$/i;
const number = (text: string) => Number(text.replace(',', '.'));

/**
 * Findings of one cell, parted by `;`, `|` or line ends: `probe_mark = yes; Latch whitened = no; tie_near = 12/25 mm` (value/limit unit).
 * A finding is named by its code or its name in one of our languages.
 *
 * @returns the text of the first part that cannot be understood, instead of the findings
 */
export function readFindings(cell: string): SettledFinding[] | string {
  const findings = new Map<FindingCode, SettledFinding>();
  for (const part of cell.split(/[;|\n]/).map((it) => it.trim())) {
    if (part === '') continue;
    const [, name = '', said = ''] = /^([^=:]+)[=:](.+)$/.exec(part) ?? [];
    const code = codeOf.get(fold(name));
    const stated = stateOf(said.trim());
    const settled = code && stated && !findings.has(code) ? settleFinding({ code, ...stated }) : part;
    if (typeof settled === 'string') return part;
    findings.set(settled.code, settled);
  }
  return [...findings.values()];
}

function stateOf(said: string) {
  const answer = answerOf.get(fold(said));
  if (answer) return { answer, value: null, limit: null, unit: null };
  const [, value, limit, unit = ''] = measured.exec(said) ?? [];
  const known = findingUnits.find((it) => it.toLowerCase() === unit.toLowerCase());
  if (!value || !limit || (unit !== '' && !known)) return null;
  return { value: number(value), limit: number(limit), unit: (known ?? null) as FindingUnit | null };
}

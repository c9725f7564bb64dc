import { type Answer, type FindingCode, type FindingUnit, findingCatalogue } from '#contracts/finding-catalogue.ts';

export interface StatedFinding {
  code: FindingCode;
  answer?: Answer | undefined;
  value: number | null;
  limit: number | null;
  unit: FindingUnit | null;
}
export interface SettledFinding {
  code: FindingCode;
  answer: Answer;
  value: number | null;
  limitValue: number | null;
  unit: FindingUnit | null;
}

const newtonsPerPoundForce = 4.4482216152605;

/** Answer and value as stored: a measured value decides the answer; forces are kept in newtons. Or what is wrong, in words. */
export function settleFinding(stated: StatedFinding): SettledFinding | string {
  const { code, answer } = stated;
  const entry = findingCatalogue[code];
  if (entry.taken === 'computed') return 'is answered by the data and cannot be entered';
  if (stated.value === null) return { code, answer: answer!, value: null, limitValue: null, unit: null };
  if (entry.taken !== 'measured') return 'takes yes, no or could not tell, no value';
  const unit = stated.unit ?? entry.unit!;
  const convertible = entry.unit === 'N' && unit === 'lbf';
  if (unit !== entry.unit && !convertible) return `is measured in ${entry.unit}`;
  const factor = convertible ? newtonsPerPoundForce : 1;
  const value = stated.value * factor;
  const limitValue = stated.limit === null ? null : stated.limit * factor;
  if (limitValue === null) return { code, answer: answer!, value, limitValue, unit: entry.unit! };
  const decided: Answer = (entry.yesWhen === 'below' ? value < limitValue : value > limitValue) ? 'yes' : 'no';
  if (answer && answer !== decided) return `the value against its limit says ${decided}, not ${answer}`;
  return { code, answer: decided, value, limitValue, unit: entry.unit! };
}

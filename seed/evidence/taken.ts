import { mootFindings } from '#api/features/evidence/computed.rules.ts';
import { type Answer, type FindingCode, findingCatalogue } from '#contracts/finding-catalogue.ts';
import type { Dice } from '../random.ts';
import type { Filed } from '../tables/reports.ts';
import { answerOf, isCause, leaningOf, type TrueFinding } from './other-world.ts';

export interface Taken {
  code: FindingCode;
  answer: Answer;
  value: number | null;
  limit: number | null;
}

/** Limits of the drawings, invented. */
const limits: Partial<Record<FindingCode, number>> = {
  lance_low: 0.85,
  depth_short: 7.4,
  sharp_exit: 45,
  tie_near: 30,
  force_below_minimum: 60,
  load_above_rating: 50,
};

/** People look first at what is quick, and at what the part shows. */
function wanted({ minutes, really }: TrueFinding, cause: string): number {
  return (isCause(cause) && really[cause] > 0.6 ? 3 : 1) / minutes;
}

function measure(code: FindingCode, answer: Answer, dice: Dice): Pick<Taken, 'value' | 'limit'> {
  const limit = limits[code];
  if (!limit || answer === 'could_not_tell' || dice.chance(0.4)) return { value: null, limit: null };
  const below = (findingCatalogue[code].yesWhen === 'below') === (answer === 'yes');
  const part = below ? 0.55 + 0.4 * dice.next() : 1.05 + 0.5 * dice.next();
  return { value: Math.round(100 * limit * part) / 100, limit };
}

/** The findings that somebody took on a report: five to ten, those that its housing can show. */
export function takenOn({ report }: Filed, findings: readonly TrueFinding[], count: number, dice: Dice): Taken[] {
  const { cause, run } = report.fault;
  if (!isCause(cause)) return [];
  const { style, lock } = run.program.housing;
  const moot = new Set<string>(mootFindings({ retention: style, lockKind: lock }));
  const leaning = leaningOf(dice);
  return findings
    .filter(({ code, minutes }) => minutes > 0 && minutes <= 8 && !moot.has(code))
    .map((finding) => ({ finding, key: Math.log(1 - dice.next()) / wanted(finding, cause) }))
    .sort((a, b) => b.key - a.key)
    .slice(0, count)
    .map(({ finding }) => {
      const code = finding.code as FindingCode;
      const answer = answerOf(finding, cause, leaning, dice);
      return { code, answer, ...measure(code, answer, dice) };
    });
}

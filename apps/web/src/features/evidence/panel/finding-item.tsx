import { useTranslation } from 'react-i18next';
import type { Finding } from '#contracts/evidence.ts';
import { type FindingCode, findingCatalogue } from '#contracts/finding-catalogue.ts';
import { useFormat } from '#web/ui/language.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { useTakeFindings } from '../queries.ts';
import { Sketch } from '../sketch/sketch.tsx';
import { useFindingTerms } from '../use-findings.ts';
import { AnswerButtons } from './answer-buttons.tsx';
import { MeasureForm } from './measure-form.tsx';
import classes from './panel.module.css';

interface Props {
  reportId: string;
  code: FindingCode;
  finding: Finding | undefined;
  /** Minutes of work, where the check is still open. */
  minutes: number | undefined;
  mayTake: boolean;
}

/** One finding: drawing, how to look, and its answer. */
export const FindingItem = ({ reportId, code, finding, minutes, mayTake }: Props) => {
  const { t } = useTranslation('evidence');
  const { name, look } = useFindingTerms()[code];
  const { taken, tool } = findingCatalogue[code];
  const take = useTakeFindings(reportId);
  const means = [minutes !== undefined && t('finding.minutes', { minutes }), t(`tool.${tool}`)].filter(Boolean);
  return (
    <div className={classes.finding}>
      <Sketch code={code} title={name} />
      <div>
        <h4>{name}</h4>
        <p>{look}</p>
        {taken !== 'computed' && <p className={classes.means}>{means.join(' · ')}</p>}
        <Given finding={finding} spelled={taken === 'computed' || !mayTake} />
      </div>
      {taken !== 'computed' && mayTake && (
        <div className={classes.wide} style={{ gridColumn: '1 / -1' }}>
          {taken === 'measured' && (
            <MeasureForm
              key={finding?.at}
              code={code}
              taken={finding}
              busy={take.isPending}
              onTake={(draft) => take.mutate({ findings: [draft] })}
            />
          )}
          <AnswerButtons
            label={name}
            given={finding?.answer ?? null}
            busy={take.isPending}
            onAnswer={(answer) => take.mutate({ findings: [{ code, answer }] })}
            onTakeBack={() => take.mutate({ remove: [code] })}
          />
          {take.error && <ProblemNote error={take.error} />}
        </div>
      )}
    </div>
  );
};

/** What was answered, by whom and when. */
const Given = ({ finding, spelled }: { finding: Finding | undefined; spelled: boolean }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  if (!finding) return null;
  const { value, limit, unit, source, by, at } = finding;
  const figure = (it: number) => format.number(it, { maximumFractionDigits: 2 });
  return (
    <>
      {spelled && (
        <p>
          <span className={classes.given}>{t(`answer.${finding.answer}`)}</span>
        </p>
      )}
      {value !== null && limit !== null && unit && (
        <p>{t('finding.measured', { value: figure(value), limit: figure(limit), unit: t(`unit.${unit}`) })}</p>
      )}
      {by && at && (
        <p className={classes.means}>
          {t('finding.by', { name: by, when: format.instant(at) })}
          {source === 'import' && ` · ${t('finding.imported')}`}
        </p>
      )}
    </>
  );
};

import { useTranslation } from 'react-i18next';
import { type Answer, type FindingCode, findingCatalogue } from '#contracts/finding-catalogue.ts';
import { Sketch } from '../sketch/sketch.tsx';
import { useFindingTerms } from '../use-findings.ts';
import classes from './checklist.module.css';

interface Props {
  code: FindingCode;
  minutes: number | null;
  answer: Answer | null;
}

/** One finding on the sheet: drawing, how to look, boxes to tick or the answer already given. */
export const CheckItem = ({ code, minutes, answer }: Props) => {
  const { t } = useTranslation('evidence');
  const { name, look } = useFindingTerms()[code];
  const { taken, tool, unit } = findingCatalogue[code];
  return (
    <li className={classes.item}>
      <Sketch code={code} title={name} />
      <div>
        <h3>{name}</h3>
        <p>{look}</p>
        <p className={classes.quiet}>
          {minutes !== null && `${t('finding.minutes', { minutes })} · `}
          {taken === 'computed' ? t('finding.byData') : t(`tool.${tool}`)}
        </p>
      </div>
      {answer ? (
        <p>
          <strong>{t(`answer.${answer}`)}</strong>
        </p>
      ) : (
        <div>
          <p className={classes.boxes}>
            <span className={classes.box}>{t('checklist.yes')}</span>
            <span className={classes.box}>{t('checklist.no')}</span>
            <span className={classes.box}>{t('checklist.couldNot')}</span>
          </p>
          {unit && <p>{t('checklist.measure', { unit: t(`unit.${unit}`) })}</p>}
        </div>
      )}
    </li>
  );
};

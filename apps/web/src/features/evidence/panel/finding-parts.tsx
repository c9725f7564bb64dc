import { useTranslation } from 'react-i18next';
import type { Evidence } from '#contracts/evidence.ts';
import { type FindingPart, findingCatalogue, findingParts } from '#contracts/finding-catalogue.ts';
import { useFormat } from '#web/ui/language.ts';
import { codesOf, useFindingTerms } from '../use-findings.ts';
import { FindingItem } from './finding-item.tsx';
import classes from './panel.module.css';

interface Props {
  reportId: string;
  evidence: Evidence;
  mayTake: boolean;
}

/** All findings by the part they are seen on. */
export const FindingParts = (props: Props) => (
  <div>
    {findingParts.map((part) => (
      <Part key={part} part={part} {...props} />
    ))}
  </div>
);

const Part = ({ part, reportId, evidence, mayTake }: Props & { part: FindingPart }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const terms = useFindingTerms();
  const found = new Map(evidence.findings.map((finding) => [finding.code, finding]));
  const minutes = new Map(evidence.suggestion.nextChecks.map((check) => [check.finding, check.minutes]));
  const codes = codesOf(part);
  const moot = codes.filter((code) => evidence.moot.includes(code) && !found.has(code));
  const asked = codes.filter((code) => findingCatalogue[code].taken !== 'computed' && !moot.includes(code));
  const byData = codes.filter((code) => findingCatalogue[code].taken === 'computed' && found.has(code));
  const item = (code: (typeof codes)[number]) => (
    <li key={code}>
      <FindingItem
        reportId={reportId}
        code={code}
        finding={found.get(code)}
        minutes={minutes.get(code)}
        mayTake={mayTake}
      />
    </li>
  );
  return (
    <details className={classes.part}>
      <summary>
        <span>{t(`part.${part}`)}</span>
        <span className={classes.quiet}>
          {t('panel.answered', { taken: asked.filter((code) => found.has(code)).length, all: asked.length })}
        </span>
      </summary>
      <ul className={classes.findings}>{asked.map(item)}</ul>
      {byData.length > 0 && (
        <>
          <h4>{t('finding.byData')}</h4>
          <p className={classes.quiet}>{t('finding.byDataWhy')}</p>
          <ul className={classes.findings}>{byData.map(item)}</ul>
        </>
      )}
      {moot.length > 0 && (
        <p className={classes.quiet}>
          {t('finding.notKnown', { findings: format.list(moot.map((code) => terms[code].name)) })}
        </p>
      )}
    </details>
  );
};

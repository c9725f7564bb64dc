import { Modal } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { RecordFilter, TrackRecord } from '#contracts/evidence.ts';
import { type Cause, causes } from '#contracts/taxonomy.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { CaseList } from './case-list.tsx';
import classes from './record.module.css';

interface Props {
  record: TrackRecord;
  filter: Partial<RecordFilter>;
}

/** What was suggested against what was confirmed; every number opens its reports. */
export const ConfusionTable = ({ record: { confusion }, filter }: Props) => {
  const { t } = useTranslation('evidence');
  const { t: ui } = useTranslation('ui');
  const format = useFormat();
  const terms = useTerms();
  const [shown, setShown] = useState<{ suggested: Cause; confirmed: Cause }>();
  if (confusion.length === 0) return null;
  const seen = causes.filter((cause) =>
    confusion.some(({ suggested, confirmed }) => suggested === cause || confirmed === cause),
  );
  const largest = Math.max(...confusion.map(({ cases }) => cases));
  const cell = (suggested: Cause, confirmed: Cause) =>
    confusion.find((it) => it.suggested === suggested && it.confirmed === confirmed)?.cases ?? 0;
  const shade = (cases: number) => `rgb(31 100 120 / ${(0.3 * cases) / largest})`;
  const named = ({ suggested, confirmed }: { suggested: Cause; confirmed: Cause }) => ({
    suggested: terms.cause[suggested],
    confirmed: terms.cause[confirmed],
  });
  return (
    <section>
      <h2>{t('record.confusion')}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls sideways must be reachable by keyboard */}
      <section className={classes.scroll} tabIndex={0} aria-label={t('record.confusion')}>
        <table className={classes.confusion}>
          <caption>{t('record.confusionCaption')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('record.confusionCorner')}</th>
              {seen.map((cause) => (
                <th key={cause} scope="col">
                  {terms.cause[cause]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {seen.map((suggested) => (
              <tr key={suggested}>
                <th scope="row">{terms.cause[suggested]}</th>
                {seen.map((confirmed) => {
                  const cases = cell(suggested, confirmed);
                  const words = { ...named({ suggested, confirmed }), cases: format.count(cases) };
                  return (
                    <td
                      key={confirmed}
                      data-same={suggested === confirmed || undefined}
                      style={{ background: shade(cases) }}
                    >
                      {cases > 0 && (
                        <button
                          type="button"
                          aria-label={t('record.confusionCell', words)}
                          onClick={() => setShown({ suggested, confirmed })}
                        >
                          {format.count(cases)}
                        </button>
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <Modal
        opened={shown !== undefined}
        onClose={() => setShown(undefined)}
        size="xl"
        title={shown && t('record.casesTitle', named(shown))}
        closeButtonProps={{ 'aria-label': ui('close') }}
      >
        {shown && <CaseList query={{ ...filter, ...shown }} />}
      </Modal>
    </section>
  );
};

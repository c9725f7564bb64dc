import { useTranslation } from 'react-i18next';
import type { TrackRecord } from '#contracts/evidence.ts';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useFormat } from '#web/ui/language.ts';
import { Stat, Stats } from '#web/ui/stat.tsx';

/** How far two people agree on the cause, and a person who did not see the suggestion with it. */
export const Agreement = ({ record: { agreement, blind } }: { record: TrackRecord }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const percent = (share: number) => format.percent(share, 0);
  return (
    <section>
      <h2>{t('record.agreement')}</h2>
      {agreement.pairs === 0 ? (
        <p>{t('record.noOpinions')}</p>
      ) : (
        <>
          <p>{t('record.agreementText', { count: agreement.pairs })}</p>
          <Stats>
            <Stat
              label={t('record.kappa')}
              figure={<EstimateText estimate={agreement.kappa} brief />}
              note={t('record.kappaNote')}
            />
            <Stat
              label={t('record.observed')}
              figure={<EstimateText estimate={agreement.observed} write={percent} writeLimit={percent} brief />}
            />
            <Stat
              label={t('record.blind')}
              figure={<EstimateText estimate={blind} write={percent} writeLimit={percent} brief />}
              note={t('record.blindNote')}
            />
          </Stats>
        </>
      )}
    </section>
  );
};

import { SegmentedControl } from '@mantine/core';
import { useMediaQuery } from '@mantine/hooks';
import { useNavigate } from '@tanstack/react-router';
import { useTranslation } from 'react-i18next';
import type { Escapes } from '#contracts/analyses.ts';
import { Figure } from '#web/ui/chart/figure.tsx';
import { EstimateText } from '#web/ui/estimate-text.tsx';
import { useCaptions } from '#web/ui/filter/use-captions.ts';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useFormat } from '#web/ui/language.ts';
import { MoneyText } from '#web/ui/money-text.tsx';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import { Stat, Stats } from '#web/ui/stat.tsx';
import { FlowKey } from './flow-key.tsx';
import { FlowPicture } from './flow-picture.tsx';
import { GatesTable } from './gates-table.tsx';
import { type Cell, matrixOf } from './matrix.ts';
import { MatrixTable } from './matrix-table.tsx';
import { escapesRoute } from './routes.ts';
import { type Weight, weights } from './weights.ts';

interface Props {
  escapes: Escapes;
  filter: FilterValues;
  weight: Weight;
}

export const EscapesView = ({ escapes, filter, weight }: Props) => {
  const { t } = useTranslation('escapes');
  const format = useFormat();
  const navigate = useNavigate({ from: escapesRoute.fullPath });
  const captions = useCaptions(escapes);
  const upright = useMediaQuery('(max-width: 48em)', false, { getInitialValueInEffect: false });
  const { currency, passedTwo, withoutOrigin, total, period } = escapes;
  const all: FilterValues = { ...filter, ...period };
  const matrix = matrixOf(escapes.cells);
  const asMoney = weight === 'booked' || weight === 'estimated';
  const tilde = weight === 'estimated' ? '~ ' : '';
  const write = (value: number) =>
    asMoney ? `${tilde}${format.moneyShort({ amountMinor: value, currency })}` : format.count(value);
  const filterOf = ({ origin, found }: Cell): FilterValues => ({ ...all, origin: [origin], found: [found] });
  const unit = t(`weight.unit.${weight}`, { currency });

  return (
    <>
      <Stats>
        <Stat
          label={t('stat.passedTwo')}
          figure={format.count(passedTwo.reports)}
          interval={
            <EstimateText
              estimate={passedTwo.share}
              write={(share) => t('stat.ofKnown', { share: format.percent(share) })}
              writeLimit={(share) => format.percent(share)}
            />
          }
          link={<ReportsLink filter={{ ...all, gates: 2 }}>{t('stat.open', { count: passedTwo.reports })}</ReportsLink>}
        />
        <Stat
          label={t('stat.passedTwoBooked')}
          figure={<MoneyText money={{ amountMinor: passedTwo.bookedMinor, currency }} basis="booked" short />}
          note={<MoneyText money={{ amountMinor: passedTwo.estimateMinor, currency }} basis="estimated" short />}
        />
        <Stat
          label={t('stat.withoutOrigin')}
          figure={format.count(withoutOrigin.reports)}
          note={t('stat.withoutOriginNote', { total: format.count(total.reports) })}
          link={
            <ReportsLink filter={{ ...all, origin: ['none'] }}>
              {t('stat.open', { count: withoutOrigin.reports })}
            </ReportsLink>
          }
        />
      </Stats>
      <SegmentedControl
        className="no-print"
        mb="md"
        aria-label={t('weight.label')}
        data={weights.map((value) => ({ value, label: t(`weight.${value}`) }))}
        value={weight}
        orientation={upright ? 'vertical' : 'horizontal'}
        onChange={(value) =>
          void navigate({ search: (now) => ({ ...now, weight: value as Weight }), resetScroll: false })
        }
      />
      <Figure title={t('flow.title')} captions={{ unit, ...captions }}>
        <FlowPicture
          matrix={matrix}
          weight={weight}
          upright={upright === true}
          write={write}
          filterOf={filterOf}
          spoken={t('flow.spoken')}
        />
        <FlowKey />
      </Figure>
      <MatrixTable
        matrix={matrix}
        weight={weight}
        caption={t('matrix.caption', { unit })}
        write={write}
        filter={all}
        filterOf={filterOf}
      />
      <GatesTable gates={escapes.gates} />
    </>
  );
};

import { useQueries, useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useTranslation } from 'react-i18next';
import type { Report } from '#contracts/failures.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import { type NamedResource, namedQuery, rowText, usePlants } from '#web/ui/lookup.ts';
import { CavityPicture } from '../cavity-picture.tsx';
import { housingQuery, stagesQuery } from '../plant-data.ts';
import classes from './report.module.css';

const RowName = ({ resource, id }: { resource: NamedResource; id: string }) => {
  const { data } = useQuery(namedQuery(resource, id));
  return data ? rowText(data) : '…';
};

const Tools = ({ ids }: { ids: readonly string[] }) => {
  const format = useFormat();
  const tools = useQueries({ queries: ids.map((id) => namedQuery('tools', id)) });
  return format.list(tools.map(({ data }) => (data ? rowText(data) : '…')));
};

export const Facts = ({ report }: { report: Report }) => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  const terms = useTerms();
  const plant = usePlants().find(({ id }) => id === report.plantId);
  const own = useQuery(stagesQuery(report.plantId)).data?.find(({ id }) => id === report.stageId);
  const face = useQuery({ ...housingQuery(report.housingId ?? ''), enabled: report.housingId !== null }).data;
  const row = (resource: NamedResource, id: string | null) => id && <RowName resource={resource} id={id} />;
  const found =
    own && own.name !== terms.stage[report.found]
      ? `${own.name} (${terms.stage[report.found]})`
      : terms.stage[report.found];
  const inspected =
    report.quantityInspected === null ? '' : t('report.ofInspected', { text: format.count(report.quantityInspected) });

  const facts: [string, ReactNode][] = [
    [t('field.plant'), plant && rowText(plant)],
    [t('field.line'), row('lines', report.lineId)],
    [t('field.station'), report.station],
    [t('field.shift'), report.shift],
    [t('field.found'), found],
    [t('field.source'), terms.source[report.source]],
    [t('field.foundOn'), report.foundAt ? format.instant(report.foundAt, plant?.zone) : format.day(report.foundOn)],
    [t('field.builtOn'), report.builtOn && format.day(report.builtOn)],
    [t('field.housing'), row('housings', report.housingId)],
    [t('field.terminal'), row('terminals', report.terminalId)],
    [t('field.wire'), row('wires', report.wireId)],
    [t('field.tools'), report.toolIds.length > 0 && <Tools ids={report.toolIds} />],
    [t('field.fixturePosition'), report.fixturePosition],
    [t('field.reelLot'), report.reelLot],
    [t('field.housingLot'), report.housingLot],
    [t('report.serials'), [report.serialFrom, report.serialTo].filter((it) => it !== null).join(' – ')],
    [t('field.customer'), row('customers', report.customerId)],
    [t('field.customerRef'), report.customerRef],
    [t('field.effect'), report.effect && terms.effect[report.effect]],
    [t('field.quantityFound'), `${format.count(report.quantityFound)}${inspected}`],
    [t('field.lockState'), terms.lockState[report.lockState]],
    [t('field.disposition'), terms.disposition[report.disposition]],
    [t('field.externalRef'), report.externalRef],
    [
      t('report.recorded'),
      [format.instant(report.reportedAt, plant?.zone), report.reportedBy].filter(Boolean).join(' · '),
    ],
    [t('report.gatesPassed'), report.gatesPassed !== null && format.count(report.gatesPassed)],
  ];

  return (
    <>
      <dl className={classes.facts}>
        {facts.map(
          ([name, value]) =>
            value && (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{value}</dd>
              </div>
            ),
        )}
      </dl>
      {report.note && <p className={classes.note}>{report.note}</p>}
      {face && report.cavities.length > 0 && (
        <CavityPicture face={face} chosen={report.cavities} label={t('field.cavities')} />
      )}
      {!face && report.cavities.length > 0 && (
        <p>
          {t('field.cavities')}: <strong>{report.cavities.join(', ')}</strong>
        </p>
      )}
    </>
  );
};

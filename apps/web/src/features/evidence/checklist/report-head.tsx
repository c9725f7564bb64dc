import { useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import type { Report } from '#contracts/failures.ts';
import { useFormat } from '#web/ui/language.ts';
import { type NamedResource, namedQuery, rowText, usePlants } from '#web/ui/lookup.ts';
import classes from './checklist.module.css';

const RowName = ({ resource, id }: { resource: NamedResource; id: string }) => {
  const { data } = useQuery(namedQuery(resource, id));
  return data ? rowText(data) : '…';
};

/** Which parts the sheet is for. */
export const ReportHead = ({ report }: { report: Report }) => {
  const { t } = useTranslation('evidence');
  const format = useFormat();
  const plant = usePlants().find(({ id }) => id === report.plantId);
  const row = (resource: NamedResource, id: string | null) => id && <RowName resource={resource} id={id} />;
  return (
    <dl className={classes.head}>
      {(
        [
          ['report', report.number],
          ['plant', plant && rowText(plant)],
          ['housing', row('housings', report.housingId)],
          ['terminal', row('terminals', report.terminalId)],
          ['wire', row('wires', report.wireId)],
          ['reelLot', report.reelLot],
          ['housingLot', report.housingLot],
          ['foundOn', format.day(report.foundOn)],
          ['quantity', format.count(report.quantityFound)],
        ] as const
      ).map(([name, value]) => (
        <div key={name}>
          <dt>{t(`checklist.${name}`)}</dt>
          <dd>{value ?? '–'}</dd>
        </div>
      ))}
    </dl>
  );
};

import { Anchor } from '@mantine/core';
import { useTranslation } from 'react-i18next';
import type { Plant, StandardCost } from '#contracts/master-data.ts';
import { dispositions, stages } from '#contracts/taxonomy.ts';
import { useFormat, useTerms } from '#web/ui/language.ts';
import classes from './master-data.module.css';
import type { CostKey } from './standard-costs.ts';

interface Props {
  plant: Plant;
  held: ReadonlyMap<CostKey, StandardCost>;
  day: string;
  onOpen: (id: string) => void;
}

/** What holds on the day, with the day since when; a press opens the row. */
export const CostGrid = ({ plant, held, day, onOpen }: Props) => {
  const { t } = useTranslation('master-data');
  const terms = useTerms();
  const format = useFormat();
  return (
    <div className={classes.grid}>
      <table>
        <caption className="visually-hidden">{t('costs.caption', { plant: plant.name, day: format.day(day) })}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">{t('field.stage')}</span>
            </th>
            {dispositions.map((disposition) => (
              <th key={disposition} scope="col">
                {terms.disposition[disposition]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {stages.map((stage) => (
            <tr key={stage}>
              <th scope="row">{terms.stage[stage]}</th>
              {dispositions.map((disposition) => {
                const row = held.get(`${stage} ${disposition}`);
                return (
                  <td key={disposition} data-label={terms.disposition[disposition]} data-empty={!row || undefined}>
                    {row ? (
                      <span>
                        <Anchor component="button" type="button" onClick={() => onOpen(row.id)}>
                          {format.money({ amountMinor: row.terminalMinor, currency: plant.currency })}
                        </Anchor>
                        <span className={classes.since}>{t('costs.since', { day: format.day(row.validFrom) })}</span>
                      </span>
                    ) : (
                      <span className={classes.quiet}>–</span>
                    )}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};

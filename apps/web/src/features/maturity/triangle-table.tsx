import { useTranslation } from 'react-i18next';
import type { Maturity } from '#contracts/maturity.ts';
import { useFormat } from '#web/ui/language.ts';
import { AddressLink } from '#web/ui/reports-link.tsx';
import classes from './maturity.module.css';
import { cellAddress, monthText } from './months.ts';

/** Reports by build month and months in service, cumulated. Darker is more of the row's expected final count. */
export const TriangleTable = ({ rows }: { rows: Maturity['rows'] }) => {
  const { t } = useTranslation('maturity');
  const format = useFormat();
  const ages = Array.from({ length: Math.max(0, ...rows.map(({ age }) => age + 1)) }, (_, age) => age);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys scroll it
    <section className={classes.scroll} tabIndex={0} aria-label={t('triangle.label')}>
      <table className={classes.triangle}>
        <caption>
          <span className={classes.what}>{t('triangle.caption')}</span>
        </caption>
        <thead>
          <tr>
            <th scope="col" className={classes.corner}>
              {t('triangle.corner')}
            </th>
            {ages.map((age) => (
              <th key={age} scope="col">
                {age}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.month} className={row.mature ? undefined : classes.young}>
              <th scope="row">{monthText(format, row.month)}</th>
              {ages.map((age) => {
                const count = row.cumulative[age];
                if (count === undefined) return <td key={age} className={classes.toCome} />;
                const share = row.final.value ? Math.min(1, count / row.final.value) : 0;
                return (
                  <td key={age} style={{ '--share': share } as React.CSSProperties}>
                    {count === 0 ? (
                      0
                    ) : (
                      <AddressLink
                        address={cellAddress(row, age)}
                        label={t('triangle.cell', { month: monthText(format, row.month), age, count })}
                      >
                        {format.count(count)}
                      </AddressLink>
                    )}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

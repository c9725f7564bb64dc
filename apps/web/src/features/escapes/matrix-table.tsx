import { useTranslation } from 'react-i18next';
import type { FilterValues } from '#web/ui/filter/use-filter.ts';
import { useTerms } from '#web/ui/language.ts';
import { ReportsLink } from '#web/ui/reports-link.tsx';
import classes from './escapes.module.css';
import type { Cell, Matrix, Origin } from './matrix.ts';
import { type Weight, weightOf } from './weights.ts';

interface Props {
  matrix: Matrix;
  weight: Weight;
  caption: string;
  write: (value: number) => string;
  filter: FilterValues;
  filterOf: (cell: Cell) => FilterValues;
}

/** Origin by stage found. Darker is more; the frame marks what was found where it was made. */
export const MatrixTable = ({ matrix, weight, caption, write, filter, filterOf }: Props) => {
  const { t } = useTranslation('escapes');
  const terms = useTerms();
  const { origins, founds } = matrix;
  const largest = Math.max(1, ...matrix.placed.map((cell) => weightOf(cell, weight)));
  const name = (origin: Origin) => (origin === 'none' ? t('matrix.noOrigin') : terms.stage[origin]);

  return (
    <div className={classes.scroll}>
      <table className={classes.matrix} data-estimated={weight === 'estimated' || undefined}>
        <caption>
          <span className={classes.what}>{caption}</span>
        </caption>
        <thead>
          <tr>
            <th scope="col" className={classes.corner}>
              {t('matrix.corner')}
            </th>
            {founds.map((found) => (
              <th key={found} scope="col">
                <abbr title={terms.stage[found]}>{terms.stageShort[found]}</abbr>
              </th>
            ))}
            <th scope="col">{t('matrix.sum')}</th>
          </tr>
        </thead>
        <tbody>
          {origins.map((origin) => (
            <tr key={origin}>
              <th scope="row">{name(origin)}</th>
              {founds.map((found) => {
                const cell = matrix.at(origin, found);
                const figure = cell ? weightOf(cell, weight) : 0;
                return (
                  <td
                    key={found}
                    data-here={origin === found || undefined}
                    style={{ '--share': figure / largest } as React.CSSProperties}
                  >
                    {cell && (
                      <ReportsLink
                        filter={filterOf(cell)}
                        label={t('matrix.cell', {
                          origin: name(origin),
                          found: terms.stage[found],
                          figure: write(figure),
                        })}
                      >
                        {write(figure)}
                      </ReportsLink>
                    )}
                  </td>
                );
              })}
              <td className={classes.sum}>
                <ReportsLink filter={{ ...filter, origin: [origin] }}>
                  {write(weightOf(matrix.ofOrigin(origin), weight))}
                </ReportsLink>
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{t('matrix.sum')}</th>
            {founds.map((found) => (
              <td key={found}>
                <ReportsLink filter={{ ...filter, found: [found] }}>
                  {write(weightOf(matrix.ofFound(found), weight))}
                </ReportsLink>
              </td>
            ))}
            <td>
              <ReportsLink filter={filter}>
                {write(matrix.placed.reduce((sum, cell) => sum + weightOf(cell, weight), 0))}
              </ReportsLink>
            </td>
          </tr>
        </tfoot>
      </table>
    </div>
  );
};

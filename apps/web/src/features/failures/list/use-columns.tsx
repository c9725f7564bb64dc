import { Badge } from '@mantine/core';
import { useMediaQuery } from '@mantine/hooks';
import { IconCamera, IconShieldExclamation } from '@tabler/icons-react';
import { useTranslation } from 'react-i18next';
import type { ReportRow } from '#contracts/failures.ts';
import { CauseName } from '#web/ui/chart/cause-name.tsx';
import { useFormat, useTerms } from '#web/ui/language.ts';
import type { Column } from '#web/ui/table/table-columns.ts';
import { ReportLink } from '../report-link.tsx';
import { CostText } from './cost-text.tsx';
import classes from './list.module.css';

const joined = (...parts: (string | null)[]) => parts.filter((part) => part !== null).join(' · ');

/** The columns that the window has room for; a phone gets them all, as cards. */
export const useColumns = (): readonly Column<ReportRow>[] => {
  const { t } = useTranslation('failures');
  const format = useFormat();
  const terms = useTerms();
  const phone = useMediaQuery('(max-width: 40em)', false, { getInitialValueInEffect: false });
  const medium = useMediaQuery('(min-width: 62em)', true, { getInitialValueInEffect: false });
  const widest = useMediaQuery('(min-width: 110em)', true, { getInitialValueInEffect: false });
  const { reportField: field } = terms;
  const id = (id: keyof typeof field) => ({ id, header: field[id] });

  const columns: (Column<ReportRow> & { readonly room: boolean })[] = [
    {
      ...id('number'),
      room: true,
      phone: 'title',
      rowHeader: true,
      cell: (row) => (
        <span className={classes.number}>
          <ReportLink id={row.id}>{row.number}</ReportLink>
          {row.safety && <IconShieldExclamation size={16} aria-label={field.safety} className={classes.safety} />}
          {row.photoCount > 0 && <IconCamera size={16} aria-label={t('list.photos', { count: row.photoCount })} />}
        </span>
      ),
    },
    { ...id('foundOn'), room: true, cell: (row) => <span className={classes.nowrap}>{format.day(row.foundOn)}</span> },
    {
      id: 'place',
      header: t('list.place'),
      room: true,
      cell: (row) => (
        <>
          <span className={classes.nowrap}>{joined(row.plantCode, row.lineCode)}</span>
          {row.station && <span className={classes.second}>{row.station}</span>}
        </>
      ),
    },
    { ...id('shift'), room: widest, phone: 'hide', cell: (row) => row.shift },
    {
      ...id('housing'),
      room: true,
      cell: (row) => (
        <>
          <span className={classes.nowrap}>{row.housingCode}</span>
          {row.cavities.length > 0 && <span className={classes.second}>{row.cavities.join(', ')}</span>}
        </>
      ),
    },
    { ...id('terminal'), room: widest, phone: 'hide', cell: (row) => row.terminalCode },
    { ...id('tool'), room: widest, phone: 'hide', cell: (row) => row.toolCode },
    { ...id('reelLot'), room: widest, phone: 'hide', cell: (row) => row.reelLot },
    { ...id('found'), room: true, cell: (row) => terms.stageShort[row.found] },
    { ...id('effect'), room: medium, cell: (row) => row.effect && terms.effect[row.effect] },
    { ...id('quantityFound'), room: true, align: 'end', cell: (row) => format.count(row.quantityFound) },
    { ...id('disposition'), room: widest, phone: 'hide', cell: (row) => terms.disposition[row.disposition] },
    {
      ...id('cause'),
      room: true,
      cell: (row) =>
        row.cause ? (
          <CauseName cause={row.cause} />
        ) : (
          <Badge variant="outline" color="petrol.8" tt="none">
            {t('list.noCause')}
          </Badge>
        ),
    },
    { id: 'cost', header: t('list.cost'), room: medium, align: 'end', cell: (row) => <CostText cost={row.cost} /> },
  ];
  return columns.filter(({ room }) => room || phone);
};

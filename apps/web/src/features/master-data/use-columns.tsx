import { Anchor, Badge } from '@mantine/core';
import type { ReactNode } from 'react';
import { useTranslation } from 'react-i18next';
import { faceCavities } from '#contracts/cavities.ts';
import type { Housing, Tool } from '#contracts/master-data.ts';
import { useFormat, useLocale, useTerms } from '#web/ui/language.ts';
import { languageNames } from '#web/ui/language-names.ts';
import { usePlants } from '#web/ui/lookup.ts';
import type { Column } from '#web/ui/table/table-columns.ts';
import type { Field, KindView, Row } from './kinds.ts';
import { ServiceText } from './service-text.tsx';
import { useLabels } from './use-labels.ts';
import { useSection } from './use-section.ts';
import { weekdayName } from './weekday.ts';

/** How a value of a field reads in the list. */
const useCell = () => {
  const { t } = useTranslation('master-data');
  const terms = useTerms();
  const format = useFormat();
  const section = useSection();
  const locale = useLocale();
  const plants = new Map(usePlants().map((plant) => [plant.id, plant]));

  return (field: Field, row: Row): ReactNode => {
    const value = row[field.name];
    if (value === null || value === undefined || value === '') return '–';
    switch (field.type) {
      case 'plant':
        return plants.get(value as string)?.name ?? '';
      case 'choice':
        return terms[field.words][value as never];
      case 'switch':
        return value ? t('yes') : t('no');
      case 'day':
        return format.day(value as string);
      case 'count':
        return format.count(value as number);
      case 'measure':
        return `${format.number(value as number)} ${field.unit}`;
      case 'section':
        return section(value as number);
      case 'money':
        return format.money({
          amountMinor: value as number,
          currency: plants.get(row.plantId as string)?.currency ?? 'EUR',
        });
      case 'tags':
        return (value as string[]).join(', ') || '–';
      case 'weekday':
        return weekdayName(value as number, locale);
      case 'locale':
        return languageNames[value as keyof typeof languageNames];
      default:
        return String(value);
    }
  };
};

/** Columns that say more than one field. */
const useCombined = () => {
  const { t } = useTranslation('master-data');
  const section = useSection();
  return (name: string, row: Row): ReactNode => {
    if (name === 'service') return <ServiceText tool={row as unknown as Tool} />;
    if (name === 'pair') return t('pair', { base: String(row.base), quote: String(row.quote) });
    if (name === 'wireRange')
      return t('range', { low: section(row.wireMinMm2 as number), high: section(row.wireMaxMm2 as number) });
    const housing = row as unknown as Housing;
    return t('cavityCount', { count: faceCavities(housing).length, rows: housing.rows, columns: housing.columns });
  };
};

export const useColumns = (view: KindView, onOpen: (id: string) => void): readonly Column<Row>[] => {
  const { t } = useTranslation('master-data');
  const label = useLabels();
  const cell = useCell();
  const combined = useCombined();
  const fields = new Map(view.fields.map((field) => [field.name, field]));
  const figures = new Set(['count', 'measure', 'money', 'decimal', 'section']);

  return view.columns.map((name, place): Column<Row> => {
    const field = fields.get(name);
    const shown = (row: Row) => (field ? cell(field, row) : combined(name, row));
    return {
      id: name,
      header: label(name),
      align: field && figures.has(field.type) && place > 0 ? 'end' : undefined,
      ...(place === 0 && { rowHeader: true, phone: 'title' as const, nowrap: true }),
      cell: (row) =>
        place === 0 ? (
          <>
            <Anchor component="button" type="button" fw={600} ta="left" onClick={() => onOpen(row.id)}>
              {shown(row)}
            </Anchor>{' '}
            {row.retiredAt && (
              <Badge variant="default" size="sm">
                {t('retired')}
              </Badge>
            )}
          </>
        ) : (
          shown(row)
        ),
    };
  });
};

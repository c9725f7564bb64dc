import { Button, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { z } from 'zod';
import type { Import, UnknownValue, ValueMeaning } from '#contracts/imports.ts';
import { useFormat } from '#web/ui/language.ts';
import { usePlants } from '#web/ui/lookup.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { DataTable } from '#web/ui/table/data-table.tsx';
import type { Column } from '#web/ui/table/table-columns.ts';
import { MeaningField } from './meaning-field.tsx';
import { useDefineAndCheck, useImportTerms } from './queries.ts';
import { importRoute } from './routes.ts';

export type Meaning = z.input<typeof ValueMeaning>;
const keyOf = ({ field, plantId, raw }: UnknownValue) => `${field} ${plantId} ${raw}`;

/** Values nobody knows yet, most frequent first: each is given a meaning, or its rows stay refused. */
export const ValuesStep = ({ job }: { job: Import }) => {
  const { t } = useTranslation('imports');
  const terms = useImportTerms();
  const format = useFormat();
  const plants = new Map(usePlants().map((plant) => [plant.id, plant.code]));
  const [meanings, setMeanings] = useState<ReadonlyMap<string, Meaning>>(new Map());
  const navigate = importRoute.useNavigate();
  const define = useDefineAndCheck(job);
  const set = (value: UnknownValue, meaning: Meaning | null) => {
    const next = new Map(meanings);
    if (meaning) next.set(keyOf(value), meaning);
    else next.delete(keyOf(value));
    setMeanings(next);
  };
  const columns: Column<UnknownValue>[] = [
    { id: 'raw', header: t('value'), rowHeader: true, phone: 'title', cell: ({ raw }) => raw },
    { id: 'field', header: t('means'), cell: ({ field }) => terms.field[field] },
    { id: 'plant', header: t('plant'), cell: ({ plantId }) => (plantId ? plants.get(plantId) : '') },
    { id: 'rows', header: t('rows'), align: 'end', cell: ({ rows }) => format.count(rows) },
    {
      id: 'meaning',
      header: t('standsFor'),
      cell: (value) => (
        <MeaningField
          kind={job.kind}
          value={value}
          meaning={meanings.get(keyOf(value)) ?? null}
          onChange={(meaning) => set(value, meaning)}
        />
      ),
    },
  ];
  return (
    <Stack>
      <Text>{t('unknownHelp')}</Text>
      <DataTable caption={t('unknownCaption')} hideCaption columns={columns} rows={job.unknown} rowKey={keyOf} />
      {job.unknownLeftOut > 0 && <Text size="sm">{t('unknownMore', { count: job.unknownLeftOut })}</Text>}
      {define.error && <ProblemNote error={define.error} />}
      <Group>
        <Button
          loading={define.isPending}
          disabled={meanings.size === 0}
          onClick={() => define.mutate([...meanings.values()])}
        >
          {meanings.size === 0 ? t('keepNone') : t('keepAndCheck', { count: meanings.size })}
        </Button>
        {job.outcome && (
          <Button variant="default" onClick={() => navigate({ search: { step: 'check' } })}>
            {t('goOn')}
          </Button>
        )}
      </Group>
    </Stack>
  );
};

import { Button, Group, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { FieldName } from '#contracts/import-fields.ts';
import type { Import, Mapping } from '#contracts/imports.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { ColumnTable } from './column-table.tsx';
import { missingFields } from './fields.ts';
import { FileLayout } from './file-layout.tsx';
import { FixedValues } from './fixed-values.tsx';
import { useImportTerms, useMapAndCheck } from './queries.ts';
import { Questions } from './questions.tsx';

/** What the columns mean, what the file does not say, and what cannot be told from its values. */
export const ColumnsStep = ({ job }: { job: Import }) => {
  const { t } = useTranslation('imports');
  const terms = useImportTerms();
  const [mapping, setMapping] = useState<Mapping>(job.mapping);
  const check = useMapAndCheck(job);
  const missing = missingFields(job.kind, mapping);
  const unanswered = job.questions.filter((question) =>
    question.about === 'sameKey'
      ? !mapping.sameKey
      : !mapping[question.about][question.field] && mapping.columns.includes(question.field),
  );
  const setColumn = (column: number, field: FieldName | null) => {
    const columns = mapping.columns.map((before, at) => (at === column ? field : before === field ? null : before));
    setMapping({ ...mapping, columns });
  };

  return (
    <Stack gap="xl">
      {job.questions.length > 0 && <Questions questions={job.questions} mapping={mapping} onChange={setMapping} />}
      <FileLayout job={job} />
      <section>
        <Title order={2} mb="xs">
          {t('columns')}
        </Title>
        <ColumnTable job={job} mapping={mapping} onColumn={setColumn} />
      </section>
      <FixedValues kind={job.kind} mapping={mapping} onChange={setMapping} />
      {check.error && <ProblemNote error={check.error} />}
      <Group>
        <Button
          loading={check.isPending}
          disabled={missing.length > 0 || unanswered.length > 0}
          onClick={() => check.mutate(mapping)}
        >
          {t('check')}
        </Button>
        <Text size="sm" role="status">
          {missing.length > 0
            ? t('stillMissing', { fields: missing.map((field) => terms.field[field]).join(', ') })
            : unanswered.length > 0
              ? t('stillAsked')
              : t('checkHelp')}
        </Text>
      </Group>
    </Stack>
  );
};

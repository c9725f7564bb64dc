import { Button, Group, Select, Stack, Text, Title } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import { encodings, type Import, type Layout } from '#contracts/imports.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import classes from './imports.module.css';
import { useChangeLayout } from './queries.ts';

const delimiters = [',', ';', '\t', '|'] as const;
const names = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar' } as const;

/** How the file is read; found out by itself, and corrected here where that went wrong. */
export const FileLayout = ({ job }: { job: Import }) => {
  const { t } = useTranslation('imports');
  const [open, { toggle }] = useDisclosure(job.columns.length < 2);
  const { layout } = job;
  const delimiter = (sign: string) => (sign in names ? t(`delimiter.${names[sign as keyof typeof names]}`) : sign);
  const found =
    layout.format === 'csv'
      ? t('readAsText', { encoding: layout.encoding, delimiter: delimiter(layout.delimiter), line: job.headerLine })
      : t('readAsSheet', { sheet: layout.sheet, line: job.headerLine });
  return (
    <section>
      <Title order={2}>{t('layout')}</Title>
      <Group gap="xs">
        <Text size="sm">{found}</Text>
        <Button variant="subtle" size="compact-sm" onClick={toggle} aria-expanded={open}>
          {t('correctLayout')}
        </Button>
      </Group>
      {open && <LayoutForm job={job} delimiter={delimiter} />}
    </section>
  );
};

const LayoutForm = ({ job, delimiter }: { job: Import; delimiter: (sign: string) => string }) => {
  const { t } = useTranslation('imports');
  const [layout, setLayout] = useState<Layout>(job.layout);
  const [headerLine, setHeaderLine] = useState<number | null>(job.headerLine);
  const change = useChangeLayout(job);
  const lines = job.firstLines.map(({ line, cells }) => ({
    value: String(line),
    label: `${line}: ${cells.filter(Boolean).join(' · ').slice(0, 80)}`,
  }));
  const set = (next: Layout) => {
    setLayout(next);
    setHeaderLine(null);
  };
  return (
    <Stack mt="sm">
      <div className={classes.fields}>
        {layout.format === 'csv' ? (
          <>
            <Select
              label={t('encoding')}
              data={[...encodings]}
              value={layout.encoding}
              onChange={(encoding) => encoding && set({ ...layout, encoding: encoding as typeof layout.encoding })}
              allowDeselect={false}
            />
            <Select
              label={t('delimiterLabel')}
              data={[...new Set([...delimiters, layout.delimiter])].map((sign) => ({
                value: sign,
                label: delimiter(sign),
              }))}
              value={layout.delimiter}
              onChange={(sign) => sign && set({ ...layout, delimiter: sign })}
              allowDeselect={false}
            />
          </>
        ) : (
          <Select
            label={t('sheet')}
            data={layout.sheets}
            value={layout.sheet}
            onChange={(sheet) => sheet && set({ ...layout, sheet })}
            allowDeselect={false}
          />
        )}
        <Select
          label={t('headerRow')}
          placeholder={t('findHeader')}
          data={lines}
          value={headerLine === null ? null : String(headerLine)}
          onChange={(line) => setHeaderLine(line === null ? null : Number(line))}
          clearable
        />
      </div>
      {change.error && <ProblemNote error={change.error} />}
      <Group>
        <Button variant="default" loading={change.isPending} onClick={() => change.mutate({ layout, headerLine })}>
          {t('readAgain')}
        </Button>
      </Group>
    </Stack>
  );
};
